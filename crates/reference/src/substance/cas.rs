//! Registry numbers of Chemical Abstracts.

/// Whether a text is a registry number whose check digit is right.
///
/// The last digit is the sum of the others, each times its place counted from the right, modulo 10.
///
/// ```
/// // Water.
/// assert!(reference::substance::is_cas("7732-18-5"));
/// assert!(!reference::substance::is_cas("7732-18-6"));
/// ```
#[must_use]
pub fn is_cas(text: &str) -> bool {
    let parts: Vec<&str> = text.split('-').collect();
    let &[first, second, check] = parts.as_slice() else { return false };
    let shaped = (2..=7).contains(&first.len()) && second.len() == 2 && check.len() == 1;
    let digits: Option<Vec<u32>> = first.chars().chain(second.chars()).map(|c| c.to_digit(10)).collect();
    let (Some(digits), Some(check)) = (digits, check.chars().next().and_then(|c| c.to_digit(10))) else { return false };
    let sum: u32 = (1..).zip(digits.iter().rev()).map(|(place, digit)| place * digit).sum();
    shaped && sum % 10 == check
}
