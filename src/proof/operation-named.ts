import { OPERATIONS, type Operation } from "../drawing/index.js";

/** The operation that a layer or group is called by, in capitals or not; null if by none. */
export function operationNamed(name: string): Operation | null {
	const lower = name.toLowerCase();
	return OPERATIONS.find((operation) => operation === lower) ?? null;
}
