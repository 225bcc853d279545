//! Quantities in files.

use serde::{Deserialize, Serialize};
use units::{Amount, Dimension, Length, Quantity, Range, Ratio, Usage};

#[derive(Debug, PartialEq, Serialize, Deserialize)]
struct Field {
    #[serde(with = "units::text")]
    swing: Length,
    #[serde(default, deserialize_with = "units::text::optional", serialize_with = "units::text::write_optional")]
    share: Option<Ratio>,
    #[serde(default, deserialize_with = "units::text::optional", serialize_with = "units::text::write_optional")]
    gap: Option<Range<Length>>,
    #[serde(deserialize_with = "units::text::quantity", serialize_with = "units::text::write")]
    pack: Amount,
    used: Usage,
}

#[test]
fn read_and_written() {
    let text = r#"{"swing":"180 mm","share":"5 %","gap":"1 mm .. 2 mm .. 3 mm","pack":"500 mL","used":"4 h/week"}"#;
    let field: Field = serde_json::from_str(text).unwrap();
    assert_eq!(field.gap.map(|gap| gap.high.base()), Some(0.003));
    assert_eq!(serde_json::to_string(&field).unwrap(), text);
    let bare: Field = serde_json::from_str(r#"{"swing":"7 in","share":0.05,"pack":"1 piece","used":"continuous"}"#).unwrap();
    assert_eq!(bare.share.map(Quantity::base), Some(0.05));
    assert_eq!(bare.gap, None);
}

#[test]
fn refused_with_the_same_words() {
    let error = serde_json::from_str::<Field>(r#"{"swing":180,"pack":"1 L","used":"4 h/week"}"#).unwrap_err().to_string();
    assert!(error.contains("`180` has no unit; a length needs mm"), "{error}");
    let error = serde_json::from_str::<Dimension>(r#""size""#).unwrap_err().to_string();
    assert!(error.contains("`size` is not a kind of quantity; write one of: length, area"), "{error}");
}
