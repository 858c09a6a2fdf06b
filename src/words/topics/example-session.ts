/** A session of `jobs/handrail-knee.json`, long lines shortened by `…`: made by test/cli/topics.test.ts. */
export const EXAMPLE_SESSION: readonly string[] = [
	'{"note":"session",…,"job":"Slipway handrail knee",…}',
	'{"ask":"set","entry":1,"bend":1,…,"seat":1,"mark":{"fromStart":15.6…,…},…}',
	'{"ready":true}',
	'{"ask":"pull","entry":2,"bend":1,…,"stop":54.5,…}',
	'{"loaded":54}',
	'{"ask":"measure","entry":3,"bend":1,…,"readings":2,…}',
	'{"angles":["48 1/2",48.3]}',
	'{"ask":"decide","entry":4,"bend":1,"advice":"pull","made":{"angle":48.3…,…},…}',
	'{"do":"pull"}',
	'{"ask":"set","entry":5,"bend":1,…,"seat":2,"mark":{"fromStart":15.6…,…},…}',
	'{"quit":true}',
];
