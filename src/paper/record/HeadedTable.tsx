import { Heading } from '../Heading.tsx';
import { Table, type TableProps } from '../Table.tsx';

/** What the record leaves between its parts. */
export const TABLE_GAP = 8;
/** A table's head and a row of several lines: a head alone at the foot of a page tells nothing. */
const HEAD_AND_ROW = 100;

/**
 * A table under its heading, in the record's column. The two are no box of their own: the library keeps a heading with what follows only where
 * something stands before it.
 */
export function HeadedTable({ head, ...table }: { head: string } & Pick<TableProps, 'columns' | 'rows' | 'width'>) {
	return (
		<>
			<Heading text={head} width={table.width} ahead={HEAD_AND_ROW} gap={TABLE_GAP} />
			<Table {...table} size={7.5} />
		</>
	);
}
