//! The nearest known word to one that is not known.

/// Says what was probably meant by a word that is not known: the nearest known word, or all of them when none is near.
#[must_use]
pub fn did_you_mean<'a>(word: &str, known: impl IntoIterator<Item = &'a str>) -> String {
    const LIKENESS: f64 = 0.75;
    const MOST_LISTED: usize = 24;
    let known: Vec<&str> = known.into_iter().collect();
    let near = known.iter().map(|k| (strsim::jaro_winkler(&word.to_lowercase(), &k.to_lowercase()), *k)).max_by(|a, b| a.0.total_cmp(&b.0));
    match near {
        Some((likeness, nearest)) if likeness >= LIKENESS => format!("Did you mean `{nearest}`?"),
        _ if known.is_empty() => "Nothing is allowed here.".to_owned(),
        _ if known.len() > MOST_LISTED => format!("There are {} to choose from, such as {}.", known.len(), quoted(&known[..6])),
        _ => format!("Use one of {}.", quoted(&known)),
    }
}

fn quoted(words: &[&str]) -> String {
    words.iter().map(|word| format!("`{word}`")).collect::<Vec<_>>().join(", ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_slip_of_the_finger_is_recognised() {
        assert_eq!(did_you_mean("bench lathe", ["bench lathe", "drill press"]), "Did you mean `bench lathe`?");
    }

    #[test]
    fn a_word_like_no_other_gets_the_whole_list() {
        assert_eq!(did_you_mean("zzz", ["metric", "inch"]), "Use one of `metric`, `inch`.");
    }
}
