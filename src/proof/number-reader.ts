/** A number of SVG and DXF: no hexadecimal, no infinity, nothing left out. */
const NUMBER = /^\s*[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?\s*$/u;

/** The number that a whole text is, else NaN; one too large for a double is infinite. */
export function wholeNumber(text: string): number {
	return NUMBER.test(text) ? Number(text) : Number.NaN;
}

/** Reads the numbers, flags and letters of path data one after the other (SVG 2, 9.3.9). */
export class NumberReader {
	private at = 0;

	constructor(private readonly text: string) {}

	/** The next number, or null where none stands. */
	next(): number | null {
		this.skip();
		const from = this.at;
		const sign = this.text.charCodeAt(from);
		const digits = sign === PLUS || sign === MINUS ? from + 1 : from;
		let end = this.afterDigits(digits);
		let count = end - digits;
		if (this.text.charCodeAt(end) === POINT) {
			const fraction = end + 1;
			end = this.afterDigits(fraction);
			count += end - fraction;
		}
		if (count === 0) return null;
		this.at = this.afterExponent(end);
		return Number(this.text.slice(from, this.at));
	}

	/** A flag of an arc, 0 or 1: nothing need part it from what follows. */
	flag(): number | null {
		this.skip();
		const sign = this.text[this.at];
		if (sign !== "0" && sign !== "1") return null;
		this.at++;
		return Number(sign);
	}

	/** The letter that stands here, or null. */
	letter(): string | null {
		this.skip();
		const sign = this.text[this.at];
		if (sign === undefined || !isLetter(sign.charCodeAt(0))) return null;
		this.at++;
		return sign;
	}

	isAtEnd(): boolean {
		this.skip();
		return this.at >= this.text.length;
	}

	/** What follows, for a message. */
	rest(): string {
		return this.text.slice(this.at, this.at + 20);
	}

	private afterDigits(from: number): number {
		let at = from;
		while (isDigit(this.text.charCodeAt(at))) at++;
		return at;
	}

	private afterExponent(from: number): number {
		const letter = this.text[from];
		if (letter !== "e" && letter !== "E") return from;
		const sign = this.text.charCodeAt(from + 1);
		const digits = sign === PLUS || sign === MINUS ? from + 2 : from + 1;
		const end = this.afterDigits(digits);
		return end > digits ? end : from;
	}

	private skip(): void {
		while (isSeparator(this.text.charCodeAt(this.at))) this.at++;
	}
}

const PLUS = 43;
const MINUS = 45;
const POINT = 46;

function isDigit(code: number): boolean {
	return code >= 48 && code <= 57;
}

function isLetter(code: number): boolean {
	return (code >= 65 && code <= 90) || (code >= 97 && code <= 122);
}

/** Space, comma, tab, line feed, form feed, carriage return. */
function isSeparator(code: number): boolean {
	return code === 32 || code === 44 || code === 9 || code === 10 || code === 12 || code === 13;
}

/** All numbers of a list, or null where something else stands in it. */
export function readNumbers(text: string): number[] | null {
	const reader = new NumberReader(text);
	const result: number[] = [];
	while (!reader.isAtEnd()) {
		const value = reader.next();
		if (value === null) return null;
		result.push(value);
	}
	return result;
}
