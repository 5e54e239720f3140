//! JSON as it is written (RFC 8259), and nothing beyond it.

/// Lists and objects inside each other: one level more makes a text unreadable, so that no text can use up the stack.
const DEEPEST: u32 = 127;

/// What a text says.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Value {
    /// `null`.
    Null,
    /// `true` or `false`.
    Bool(bool),
    /// A number, digit for digit: whoever asks for it knows how exact it must be.
    Number(String),
    /// A text, its escapes resolved.
    String(String),
    /// A list.
    Array(Vec<Value>),
    /// An object, in the order it is written; a name may stand there twice.
    Object(Vec<(String, Value)>),
}

impl Value {
    /// The digits, if it is a number.
    pub fn number(&self) -> Option<&str> {
        match self {
            Value::Number(digits) => Some(digits),
            _ => None,
        }
    }

    /// The text, if it is one.
    pub fn text(&self) -> Option<&str> {
        match self {
            Value::String(text) => Some(text),
            _ => None,
        }
    }
}

/// The one value in a text; none when it is no JSON.
pub fn parse(text: &str) -> Option<Value> {
    let mut reader = Reader { text, at: 0 };
    let value = reader.value(DEEPEST)?;
    reader.end()?;
    Some(value)
}

/// The fields of the object in a text, each as the very letters that stand there; none when the text is anything else.
pub fn fields_as_written(text: &str) -> Option<Vec<(String, &str)>> {
    let mut reader = Reader { text, at: 0 };
    reader.space();
    let mut fields = Vec::new();
    reader.members(b'{', b'}', &mut |reader| {
        let name = reader.name()?;
        reader.space();
        let start = reader.at;
        reader.skip()?;
        fields.push((name, reader.text.get(start..reader.at)?));
        Some(())
    })?;
    reader.end()?;
    Some(fields)
}

/// Hands over the values of the list in a text, one after the other.
pub(super) fn each_item(text: &str, take: &mut dyn FnMut(Value) -> Option<()>) -> Option<()> {
    let mut reader = Reader { text, at: 0 };
    reader.space();
    reader.members(b'[', b']', &mut |reader| take(reader.value(DEEPEST - 1)?))?;
    reader.end()
}

/// The value that `text` begins with, and what stands behind it.
pub(super) fn leading(text: &str) -> Option<(Value, &str)> {
    let mut reader = Reader { text, at: 0 };
    let value = reader.value(DEEPEST)?;
    Some((value, text.get(reader.at..)?))
}

struct Reader<'a> {
    text: &'a str,
    at: usize,
}

impl<'a> Reader<'a> {
    fn peek(&self) -> Option<u8> {
        self.text.as_bytes().get(self.at).copied()
    }

    fn space(&mut self) {
        while matches!(self.peek(), Some(b' ' | b'\t' | b'\n' | b'\r')) {
            self.at += 1;
        }
    }

    fn eat(&mut self, byte: u8) -> Option<()> {
        (self.peek() == Some(byte)).then(|| self.at += 1)
    }

    fn end(&mut self) -> Option<()> {
        self.space();
        self.peek().is_none().then_some(())
    }

    fn value(&mut self, deep: u32) -> Option<Value> {
        self.space();
        match self.peek()? {
            b'[' => {
                let (mut items, deep) = (Vec::new(), deep.checked_sub(1)?);
                self.members(b'[', b']', &mut |reader| {
                    items.push(reader.value(deep)?);
                    Some(())
                })?;
                Some(Value::Array(items))
            }
            b'{' => {
                let (mut fields, deep) = (Vec::new(), deep.checked_sub(1)?);
                self.members(b'{', b'}', &mut |reader| {
                    fields.push((reader.name()?, reader.value(deep)?));
                    Some(())
                })?;
                Some(Value::Object(fields))
            }
            b'"' => resolve(self.quoted()?).map(Value::String),
            _ => self.plain(),
        }
    }

    /// What stands between two brackets, with commas in between.
    fn members(
        &mut self,
        open: u8,
        close: u8,
        member: &mut dyn FnMut(&mut Reader<'a>) -> Option<()>,
    ) -> Option<()> {
        self.eat(open)?;
        self.space();
        if self.eat(close).is_some() {
            return Some(());
        }
        loop {
            member(self)?;
            self.space();
            if self.eat(close).is_some() {
                return Some(());
            }
            self.eat(b',')?;
        }
    }

    /// The name of a field and the colon after it.
    fn name(&mut self) -> Option<String> {
        self.space();
        let name = resolve(self.quoted()?)?;
        self.space();
        self.eat(b':')?;
        Some(name)
    }

    /// The letters between two quotation marks; escapes are known ones.
    fn quoted(&mut self) -> Option<&'a str> {
        self.eat(b'"')?;
        let start = self.at;
        loop {
            match self.peek()? {
                b'"' => break,
                b'\\' => {
                    self.at += 1;
                    match self.peek()? {
                        b'"' | b'\\' | b'/' | b'b' | b'f' | b'n' | b'r' | b't' => {}
                        b'u' => {
                            hex(self.text.get(self.at + 1..self.at + 5)?)?;
                            self.at += 4;
                        }
                        _ => return None,
                    }
                }
                0..0x20 => return None,
                _ => {}
            }
            self.at += 1;
        }
        let inside = self.text.get(start..self.at);
        self.at += 1;
        inside
    }

    /// A word or a number.
    fn plain(&mut self) -> Option<Value> {
        for (word, value) in
            [("null", Value::Null), ("true", Value::Bool(true)), ("false", Value::Bool(false))]
        {
            if self.text.get(self.at..)?.starts_with(word) {
                self.at += word.len();
                return Some(value);
            }
        }
        let start = self.at;
        let _ = self.eat(b'-');
        if self.eat(b'0').is_none() {
            self.digits()?;
        }
        if self.eat(b'.').is_some() {
            self.digits()?;
        }
        if self.eat(b'e').or_else(|| self.eat(b'E')).is_some() {
            let _ = self.eat(b'+').or_else(|| self.eat(b'-'));
            self.digits()?;
        }
        Some(Value::Number(self.text.get(start..self.at)?.to_owned()))
    }

    fn digits(&mut self) -> Option<()> {
        let start = self.at;
        while matches!(self.peek(), Some(b'0'..=b'9')) {
            self.at += 1;
        }
        (self.at > start).then_some(())
    }

    /// Passes over one value, however deep.
    fn skip(&mut self) -> Option<()> {
        let mut open = Vec::new();
        loop {
            self.space();
            let close = match self.peek()? {
                b'[' => Some(b']'),
                b'{' => Some(b'}'),
                b'"' => self.quoted().map(|_| None)?,
                _ => self.plain().map(|_| None)?,
            };
            if let Some(close) = close {
                self.at += 1;
                self.space();
                if self.eat(close).is_none() {
                    open.push(close);
                    self.skip_name(close)?;
                    continue;
                }
            }
            loop {
                let Some(close) = open.last().copied() else { return Some(()) };
                self.space();
                if self.eat(close).is_some() {
                    open.pop();
                    continue;
                }
                self.eat(b',')?;
                self.skip_name(close)?;
                break;
            }
        }
    }

    fn skip_name(&mut self, close: u8) -> Option<()> {
        if close == b'}' {
            self.space();
            self.quoted()?;
            self.space();
            self.eat(b':')?;
        }
        Some(())
    }
}

/// Four hexadecimal digits.
fn hex(digits: &str) -> Option<u32> {
    digits.chars().try_fold(0, |sum, digit| Some(sum << 4 | digit.to_digit(16)?))
}

/// Letters with their escapes resolved; none for half of a surrogate pair.
fn resolve(letters: &str) -> Option<String> {
    let mut text = String::with_capacity(letters.len());
    let mut rest = letters;
    while let Some(at) = rest.find('\\') {
        text.push_str(rest.get(..at)?);
        let escape = rest.get(at + 1..)?.chars().next()?;
        rest = rest.get(at + 2..)?;
        text.push(match escape {
            'b' => '\u{8}',
            'f' => '\u{c}',
            'n' => '\n',
            'r' => '\r',
            't' => '\t',
            'u' => {
                let mut code = hex(rest.get(..4)?)?;
                rest = rest.get(4..)?;
                if let 0xd800..0xdc00 = code {
                    let low = hex(rest.strip_prefix("\\u")?.get(..4)?)?;
                    if !(0xdc00..0xe000).contains(&low) {
                        return None;
                    }
                    rest = rest.get(6..)?;
                    code = 0x1_0000 + ((code - 0xd800) << 10) + (low - 0xdc00);
                }
                char::from_u32(code)?
            }
            escape => escape,
        });
    }
    text.push_str(rest);
    Some(text)
}
