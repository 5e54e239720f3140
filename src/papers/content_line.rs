//! A line of a calendar file, escaped and folded (RFC 5545, sections 3.1 and 3.3.11).

/// Octets a line may have, its end left out (RFC 5545, section 3.1).
const MOST_OCTETS: usize = 75;

/// Writes `name:value` at the end of `out`. The value is one that needs no escape: a date, a number, a word.
pub fn put(out: &mut String, name: &str, value: &str) {
    fold(out, &[name, ":", value].concat());
}

/// Writes `name:text` at the end of `out`, the text escaped.
pub fn put_text(out: &mut String, name: &str, text: &str) {
    let mut line = [name, ":"].concat();
    escape(&mut line, text);
    fold(out, &line);
}

/// A backslash before `\`, `;` and `,`; a line's end, however it was typed, as `\n`. Other control characters have no
/// place in a calendar file and are left out.
fn escape(line: &mut String, text: &str) {
    let mut before = ' ';
    for c in text.chars() {
        match c {
            '\\' | ';' | ',' => line.extend(['\\', c]),
            '\n' if before == '\r' => {}
            '\n' | '\r' => line.push_str("\\n"),
            c if c.is_ascii_control() && c != '\t' => {}
            c => line.push(c),
        }
        before = c;
    }
}

/// Cuts between two characters, never within one, and begins what follows with a space, which counts.
fn fold(out: &mut String, line: &str) {
    let mut octets = 0;
    for c in line.chars() {
        if octets + c.len_utf8() > MOST_OCTETS {
            out.push_str("\r\n ");
            octets = 1;
        }
        out.push(c);
        octets += c.len_utf8();
    }
    out.push_str("\r\n");
}
