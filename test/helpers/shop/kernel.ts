import init, { type gp_Pnt, type gp_Trsf, type OpenCascadeInstance, type TopoDS_Wire } from 'replicad-opencascadejs';
import type { Point } from '../../../src/tube/job.ts';

/**
 * The OpenCASCADE geometry kernel as a second opinion: it gets lengths, angles and corner points, and finds arcs, turned frames,
 * lengths, volumes and distances by its own means.
 */
export class Kernel {
	private readonly oc: OpenCascadeInstance;

	private constructor(oc: OpenCascadeInstance) {
		this.oc = oc;
	}

	static async load(): Promise<Kernel> {
		return new Kernel(await init());
	}

	point([x, y, z]: Point): gp_Pnt {
		return new this.oc.gp_Pnt(x, y, z);
	}

	/** Straight edges and tangent arcs through sharp corners, one radius a corner. */
	spine(corners: readonly Point[], radii: readonly number[]): TopoDS_Wire {
		const { oc } = this;
		const wire = new oc.BRepBuilderAPI_MakeWire();
		let from = corners[0]!;
		for (const [i, radius] of radii.entries()) {
			const corner = corners[i + 1]!;
			const [before, after] = [unitTo(corners[i]!, corner), unitTo(corner, corners[i + 2]!)];
			const cosine = before.reduce((sum, x, axis) => sum + x * after[axis]!, 0);
			const back = radius * Math.sqrt((1 - cosine) / (1 + cosine));
			const [start, end] = [move(corner, -back, before), move(corner, back, after)];
			if (apart(from, start) > 1e-9) wire.Add(this.segment(from, start));
			// Start, tangent and end: the kernel finds center and radius itself.
			const tangent = new oc.gp_Vec(...before);
			const arc = new oc.GC_MakeArcOfCircle(this.point(start), tangent, this.point(end)).Value();
			wire.Add(new oc.BRepBuilderAPI_MakeEdge(arc).Edge());
			from = end;
		}
		wire.Add(this.segment(from, corners.at(-1)!));
		return wire.Wire();
	}

	segment(a: Point, b: Point) {
		return new this.oc.BRepBuilderAPI_MakeEdge(this.point(a), this.point(b)).Edge();
	}

	/** The arc that starts at `start` with direction `tangent` and ends at `end`. */
	arc(start: Point, tangent: Point, end: Point) {
		const { oc } = this;
		const curve = new oc.GC_MakeArcOfCircle(this.point(start), new oc.gp_Vec(...tangent), this.point(end)).Value();
		return new oc.BRepBuilderAPI_MakeEdge(curve).Edge();
	}

	length(wire: TopoDS_Wire): number {
		const properties = new this.oc.GProp_GProps();
		this.oc.BRepGProp.LinearProperties(wire, properties, false, false);
		return properties.Mass();
	}

	/** A solid rod of this radius swept along a wire that starts at the origin along +x. */
	private rod(wire: TopoDS_Wire, radius: number) {
		const { oc } = this;
		const axes = new oc.gp_Ax2(this.point([0, 0, 0]), new oc.gp_Dir(1, 0, 0));
		const rim = new oc.BRepBuilderAPI_MakeEdge(new oc.gp_Circ(axes, radius)).Edge();
		const disc = new oc.BRepBuilderAPI_MakeFace(new oc.BRepBuilderAPI_MakeWire(rim).Wire(), true).Face();
		return new oc.BRepOffsetAPI_MakePipe(wire, disc).Shape();
	}

	rodVolume(wire: TopoDS_Wire, radius: number): number {
		const { oc } = this;
		const properties = new oc.GProp_GProps();
		oc.BRepGProp.VolumeProperties(this.rod(wire, radius), properties, true, false, false);
		return properties.Mass();
	}

	/** The box along the axes of space in which such a rod just fits. */
	rodSize(wire: TopoDS_Wire, radius: number): Point {
		const { oc } = this;
		const box = new oc.Bnd_Box();
		oc.BRepBndLib.AddOptimal(this.rod(wire, radius), box, false, false);
		return [box.GetXMax() - box.GetXMin(), box.GetYMax() - box.GetYMin(), box.GetZMax() - box.GetZMin()];
	}

	/** Points of the curves in which the skins of two cylinders meet, each given by its axis from end to end. */
	whereCylindersMeet(one: Cylinder, other: Cylinder, steps: number): Point[] {
		const { oc } = this;
		const section = new oc.BRepAlgoAPI_Section(this.cylinder(one), this.cylinder(other), true);
		const points: Point[] = [];
		for (
			const edges = new oc.TopExp_Explorer(
				section.Shape(),
				oc.TopAbs_ShapeEnum.TopAbs_EDGE,
				oc.TopAbs_ShapeEnum.TopAbs_SHAPE,
			);
			edges.More();
			edges.Next()
		)
			points.push(...this.pointsAlong(oc.TopoDS.Edge(edges.Current()), steps));
		return points;
	}

	/** A cylinder's skin alone, without its ends. */
	private cylinder({ from, to, radius }: Cylinder) {
		const { oc } = this;
		const axes = new oc.gp_Ax3(this.point(from), new oc.gp_Dir(...unitTo(from, to)));
		const skin = new oc.gp_Cylinder(axes, radius);
		return new oc.BRepBuilderAPI_MakeFace(skin, 0, 2 * Math.PI, 0, apart(from, to)).Face();
	}

	wire(edges: readonly ReturnType<Kernel['segment']>[]): TopoDS_Wire {
		const wire = new this.oc.BRepBuilderAPI_MakeWire();
		for (const edge of edges) wire.Add(edge);
		return wire.Wire();
	}

	/** Places along an edge, its ends included, evenly by the curve's own parameter. */
	pointsAlong(edge: ReturnType<Kernel['segment']>, steps: number): Point[] {
		const curve = new this.oc.BRepAdaptor_Curve(edge);
		const [first, last] = [curve.FirstParameter(), curve.LastParameter()];
		return Array.from({ length: steps + 1 }, (_, i): Point => {
			const at = curve.Value(first + ((last - first) * i) / steps);
			return [at.X(), at.Y(), at.Z()];
		});
	}

	pointDistance(point: Point, edge: ReturnType<Kernel['segment']>): number {
		const vertex = new this.oc.BRepBuilderAPI_MakeVertex(this.point(point)).Vertex();
		return new this.oc.BRepExtrema_DistShapeShape(vertex, edge).Value();
	}

	/** Least distance between two edges or wires. */
	distance(a: ReturnType<Kernel['segment']>, b: ReturnType<Kernel['segment']>): number {
		return new this.oc.BRepExtrema_DistShapeShape(a, b).Value();
	}

	/** Between two directions, in degrees. */
	angle(a: Point, b: Point): number {
		return (new this.oc.gp_Dir(...a).Angle(new this.oc.gp_Dir(...b)) * 180) / Math.PI;
	}

	/** A turn of space about the line through `at` along `axis`, by the right-hand rule. */
	turn(at: Point, axis: Point, degrees: number): gp_Trsf {
		const turn = new this.oc.gp_Trsf();
		turn.SetRotation(new this.oc.gp_Ax1(this.point(at), new this.oc.gp_Dir(...axis)), (degrees * Math.PI) / 180);
		return turn;
	}

	shift([x, y, z]: Point): gp_Trsf {
		const shift = new this.oc.gp_Trsf();
		shift.SetTranslation(new this.oc.gp_Vec(x, y, z));
		return shift;
	}

	moved(point: Point, by: gp_Trsf): Point {
		const at = this.point(point).Transformed(by);
		return [at.X(), at.Y(), at.Z()];
	}
}

export interface Cylinder {
	from: Point;
	to: Point;
	radius: number;
}

const apart = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

const move = (a: Point, by: number, along: Point): Point => [
	a[0] + by * along[0],
	a[1] + by * along[1],
	a[2] + by * along[2],
];

function unitTo(a: Point, b: Point): [number, number, number] {
	const length = apart(a, b);
	return [(b[0] - a[0]) / length, (b[1] - a[1]) / length, (b[2] - a[2]) / length];
}
