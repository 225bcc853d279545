//! How wide letters are, and lines of them.

/// Width of a letter over its height, in the widest of the faces that systems have for plain text: whatever face is there, a line that was
/// measured here fits. *From memory* of such faces; the browser tests hold it against what is really drawn.
fn em(letter: char) -> f64 {
    match letter {
        'i' | 'j' | 'l' | '\'' | '|' => 0.28,
        ' ' | '\u{a0}' | '.' | ',' | ':' | ';' | 'I' | 'J' | 'f' => 0.36,
        'r' | 't' | '-' | '!' | '(' | ')' | '/' => 0.43,
        'm' | 'M' | 'W' | '%' | '—' | '…' => 1.0,
        'w' | 'C' | 'D' | 'G' | 'H' | 'N' | 'O' | 'Q' | 'U' => 0.82,
        'A'..='Z' => 0.72,
        wide if wide > '\u{2e80}' => 1.05,
        _ => 0.65,
    }
}

/// How a text is set: the height of its letters, mm, and whether they are bold.
#[derive(Debug, Clone, Copy)]
pub(super) struct Face {
    pub size: f64,
    pub bold: bool,
}

impl Face {
    /// From one line to the next.
    pub(super) fn leading(self) -> f64 {
        self.size * 1.22
    }

    /// The width of a text, mm.
    pub(super) fn wide(self, text: &str) -> f64 {
        /// What bold letters have more.
        const BOLD: f64 = 0.09;
        let more = if self.bold { BOLD } else { 0.0 };
        text.chars().fold(0.0, |wide, letter| wide + (em(letter) + more) * self.size)
    }

    /// As much of a text as fits into a width, in whole words, and the rest; a word that is wider than that is broken where `broken` allows
    /// it. Nothing where nothing fits.
    pub(super) fn line(self, text: &str, width: f64, broken: bool) -> Option<(&str, &str)> {
        let text = text.trim_start();
        if self.wide(text) <= width {
            return Some((text, ""));
        }
        let ends = text.match_indices(' ').map(|(at, _)| at);
        if let Some(end) = ends.take_while(|at| self.wide(&text[..*at]) <= width).last() {
            return Some((&text[..end], text[end..].trim_start()));
        }
        let ends = text.char_indices().map(|(at, _)| at);
        let end = ends.take_while(|at| self.wide(&text[..*at]) <= width).last().filter(|end| broken && *end > 0)?;
        Some((&text[..end], &text[end..]))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_hold_whole_words_and_lose_nothing() {
        let face = Face { size: 2.0, bold: false };
        let said = "Keep away from heat, hot surfaces, sparks, open flames and other ignition sources.";
        let (mut rest, mut words) = (said, Vec::new());
        while !rest.is_empty() {
            let (line, left) = face.line(rest, 30.0, false).unwrap();
            assert!(face.wide(line) <= 30.0);
            words.extend(line.split(' '));
            rest = left;
        }
        assert_eq!(words.join(" "), said);
    }

    #[test]
    fn a_long_word_is_broken_only_where_it_may_be() {
        let face = Face { size: 3.0, bold: true };
        assert_eq!(face.line("butoxyethoxyethanol", 10.0, false), None);
        let (line, rest) = face.line("butoxyethoxyethanol", 10.0, true).unwrap();
        assert_eq!(format!("{line}{rest}"), "butoxyethoxyethanol");
    }
}
