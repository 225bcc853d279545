//! Lines as a calendar has them: RFC 5545, sections 3.1 and 3.3.11.

/// A line is no longer than that, without its break (section 3.1).
const LONGEST_OCTETS: usize = 75;

/// The lines of a calendar.
#[derive(Debug, Default)]
pub(crate) struct Lines(String);

impl Lines {
    /// Adds a line. Where it is too long it is folded between two letters, never within one.
    pub fn put(&mut self, line: &str) {
        let mut room = LONGEST_OCTETS;
        for letter in line.chars() {
            if letter.len_utf8() > room {
                self.0.push_str("\r\n ");
                room = LONGEST_OCTETS - 1;
            }
            room -= letter.len_utf8();
            self.0.push(letter);
        }
        self.0.push_str("\r\n");
    }

    /// All of them.
    pub fn text(self) -> String {
        self.0
    }
}

/// Words as the value of a property. No control character may stand there but the tab; a new line is spelt.
pub(crate) fn escaped(words: &str) -> String {
    let mut text = String::with_capacity(words.len());
    for letter in words.chars() {
        match letter {
            '\\' | ';' | ',' => text.extend(['\\', letter]),
            '\n' => text.push_str("\\n"),
            '\t' => text.push('\t'),
            letter if letter.is_control() => {}
            letter => text.push(letter),
        }
    }
    text
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn folded(line: &str) -> String {
        let mut lines = Lines::default();
        lines.put(line);
        lines.text()
    }

    /// What section 3.3.11 says the letters after a backslash mean, read back.
    fn meant(text: &str) -> String {
        let mut letters = text.chars();
        let mut words = String::new();
        while let Some(letter) = letters.next() {
            words.extend(match letter {
                '\\' => letters.next().map(|next| if matches!(next, 'n' | 'N') { '\n' } else { next }),
                letter => Some(letter),
            });
        }
        words
    }

    #[test]
    fn the_example_of_the_standard() {
        // RFC 5545, section 3.3.11.
        let words = "Project XYZ Final Review\nConference Room - 3B\nCome Prepared.";
        assert_eq!(escaped(words), "Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.");
    }

    #[test]
    fn a_letter_of_two_octets_goes_whole_to_the_next_line() {
        // Section 3.1: 74 octets and two more are one too many; the break goes before both of them.
        let line = format!("{}é", "x".repeat(74));
        assert_eq!(folded(&line), format!("{}\r\n é\r\n", "x".repeat(74)));
        assert_eq!(folded(&"x".repeat(75)), format!("{}\r\n", "x".repeat(75)));
    }

    proptest! {
        /// Section 3.1: no line over 75 octets, and what is folded is unfolded by taking out the break and the blank after it.
        #[test]
        fn folding_loses_nothing(line in "\\PC{0,400}") {
            let folded = folded(&line);
            prop_assert!(folded.ends_with("\r\n"));
            prop_assert!(folded.split("\r\n").all(|part| part.len() <= 75));
            prop_assert_eq!(folded.replace("\r\n ", ""), format!("{line}\r\n"));
        }

        /// Section 3.3.11: bare commas and semicolons end a value, bare control characters are none of its letters.
        #[test]
        fn words_mean_what_they_were(words in "[\\PC\n\t\r\\\\;,]{0,100}") {
            let text = escaped(&words);
            prop_assert!(!text.contains(|letter: char| letter.is_control() && letter != '\t'));
            prop_assert_eq!(meant(&text), words.replace('\r', ""));
        }
    }
}
