//! How a Rust name is shown: Greek letters spelled out become letters, an underscore makes a subscript.

/// A name as text and as MathML.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Symbol {
    pub text: String,
    pub mathml: String,
}

const GREEK: [(&str, &str); 24] = [
    ("alpha", "α"),
    ("beta", "β"),
    ("gamma", "γ"),
    ("delta", "δ"),
    ("epsilon", "ε"),
    ("zeta", "ζ"),
    ("eta", "η"),
    ("theta", "θ"),
    ("iota", "ι"),
    ("kappa", "κ"),
    ("lambda", "λ"),
    ("mu", "μ"),
    ("nu", "ν"),
    ("xi", "ξ"),
    ("omicron", "ο"),
    ("pi", "π"),
    ("rho", "ρ"),
    ("sigma", "σ"),
    ("tau", "τ"),
    ("upsilon", "υ"),
    ("phi", "φ"),
    ("chi", "χ"),
    ("psi", "ψ"),
    ("omega", "ω"),
];

/// Subscripts Unicode has; a subscript with any other letter stays on the line behind an underscore.
const SUBSCRIPTS: [(char, char); 27] = [
    ('0', '₀'),
    ('1', '₁'),
    ('2', '₂'),
    ('3', '₃'),
    ('4', '₄'),
    ('5', '₅'),
    ('6', '₆'),
    ('7', '₇'),
    ('8', '₈'),
    ('9', '₉'),
    ('a', 'ₐ'),
    ('e', 'ₑ'),
    ('h', 'ₕ'),
    ('i', 'ᵢ'),
    ('j', 'ⱼ'),
    ('k', 'ₖ'),
    ('l', 'ₗ'),
    ('m', 'ₘ'),
    ('n', 'ₙ'),
    ('o', 'ₒ'),
    ('p', 'ₚ'),
    ('r', 'ᵣ'),
    ('s', 'ₛ'),
    ('t', 'ₜ'),
    ('u', 'ᵤ'),
    ('v', 'ᵥ'),
    ('x', 'ₓ'),
];

impl Symbol {
    pub fn named(name: &str) -> Self {
        let name = name.trim_start_matches("r#");
        let (prefix, rest) = match name.strip_prefix("Delta_") {
            // A difference is written before its symbol, not with the symbol hanging below.
            Some(rest) if !rest.is_empty() => ("Δ", rest),
            _ => ("", name),
        };
        let (base, subscript) = match rest.split_once('_') {
            Some((base, subscript)) if !base.is_empty() && !subscript.is_empty() => (base, Some(subscript)),
            _ => (rest, None),
        };
        let base = letter(base);
        let head = if prefix.is_empty() { identifier(&base) } else { format!("<mi>{prefix}</mi>{}", identifier(&base)) };
        let Some(subscript) = subscript else {
            return Self { text: format!("{prefix}{base}"), mathml: wrapped(prefix, head) };
        };
        let subscript = subscript.split('_').map(letter).collect::<Vec<_>>().join(",");
        let below = if subscript.chars().all(|c| c.is_ascii_digit()) { format!("<mn>{subscript}</mn>") } else { identifier(&subscript) };
        let symbol = format!("<msub>{}{below}</msub>", identifier(&base));
        let mathml = if prefix.is_empty() { symbol } else { wrapped(prefix, format!("<mi>{prefix}</mi>{symbol}")) };
        Self { text: format!("{prefix}{base}{}", lowered(&subscript)), mathml }
    }
}

fn wrapped(prefix: &str, inside: String) -> String {
    if prefix.is_empty() { inside } else { format!("<mrow>{inside}</mrow>") }
}

fn identifier(text: &str) -> String {
    format!("<mi>{}</mi>", crate::mathml::escape(text))
}

fn letter(name: &str) -> String {
    if let Some((_, letter)) = GREEK.iter().find(|(spelled, _)| *spelled == name) {
        return (*letter).to_owned();
    }
    match GREEK.iter().find(|(spelled, _)| name.eq_ignore_ascii_case(spelled) && name.starts_with(char::is_uppercase)) {
        Some((_, letter)) if name.chars().skip(1).all(char::is_lowercase) => letter.to_uppercase(),
        _ => name.to_owned(),
    }
}

fn lowered(subscript: &str) -> String {
    let lowered: Option<String> =
        subscript.chars().map(|c| SUBSCRIPTS.iter().find(|(plain, _)| *plain == c).map(|(_, below)| *below)).collect();
    lowered.unwrap_or_else(|| format!("_{subscript}"))
}
