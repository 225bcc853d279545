//! A formula as MathML, in which a fraction, a root or a raised exponent groups by its shape.

use crate::node::{Node, Operator, Tightness};
use crate::symbol::Symbol;

pub fn render(node: &Node) -> String {
    match node {
        Node::Number(text) => number(text),
        Node::Pi => "<mi>π</mi>".to_owned(),
        Node::Symbol { symbol, .. } => symbol.mathml.clone(),
        Node::Negative(inside) => format!("<mrow><mo>−</mo>{}</mrow>", wrapped(inside, loose(inside) < Tightness::Product)),
        Node::Binary { operator: Operator::Over, left, right } => format!("<mfrac>{}{}</mfrac>", render(left), render(right)),
        Node::Binary { operator, left, right } => binary(*operator, left, right),
        Node::Power { base, exponent } => {
            let groups = loose(base) < Tightness::Whole || matches!(**base, Node::Call { .. } | Node::Binary { .. });
            format!("<msup>{}{}</msup>", wrapped(base, groups), render(exponent))
        }
        Node::Root(inside) => format!("<msqrt>{}</msqrt>", render(inside)),
        Node::Exponential(inside) => format!("<msup><mi>e</mi>{}</msup>", render(inside)),
        Node::Magnitude(inside) => format!("<mrow><mo>|</mo>{}<mo>|</mo></mrow>", render(inside)),
        Node::Call { name, arguments } => call(name, arguments),
        Node::Cases { cases, otherwise } => {
            let rows: String = cases
                .iter()
                .map(|(value, condition)| row(&render(value), &format!("<mrow><mtext>if\u{a0}</mtext>{}</mrow>", render(condition))))
                .chain([row(&render(otherwise), "<mtext>otherwise</mtext>")])
                .collect();
            format!("<mrow><mo>{{</mo><mtable>{rows}</mtable></mrow>")
        }
    }
}

/// Text made safe to stand in XML.
pub fn escape(text: &str) -> String {
    text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;").replace('"', "&quot;")
}

fn row(value: &str, condition: &str) -> String {
    format!("<mtr><mtd>{value}</mtd><mtd>{condition}</mtd></mtr>")
}

fn number(text: &str) -> String {
    let (mantissa, power) = match text.split_once('×') {
        Some((mantissa, power)) => (Some(mantissa), power),
        None => (None, text),
    };
    let digits: String = power.chars().filter_map(lowered).collect();
    if digits.is_empty() {
        return format!("<mn>{}</mn>", escape(text));
    }
    let power = format!("<msup><mn>10</mn><mn>{digits}</mn></msup>");
    mantissa.map_or(power.clone(), |mantissa| format!("<mrow><mn>{mantissa}</mn><mo>×</mo>{power}</mrow>"))
}

fn lowered(c: char) -> Option<char> {
    Some(match c {
        '⁰' => '0',
        '¹' => '1',
        '²' => '2',
        '³' => '3',
        '⁴' => '4',
        '⁵' => '5',
        '⁶' => '6',
        '⁷' => '7',
        '⁸' => '8',
        '⁹' => '9',
        '⁻' => '−',
        _ => return None,
    })
}

/// A fraction groups by its shape, wherever it stands in a sum or a product.
fn loose(node: &Node) -> Tightness {
    if matches!(node, Node::Binary { operator: Operator::Over, .. }) { Tightness::Whole } else { node.tightness() }
}

fn wrapped(node: &Node, needed: bool) -> String {
    if needed { format!("<mrow><mo>(</mo>{}<mo>)</mo></mrow>", render(node)) } else { render(node) }
}

fn binary(operator: Operator, left: &Node, right: &Node) -> String {
    let tightness = operator.tightness();
    let sign = match operator {
        Operator::Plus => "<mo>+</mo>".to_owned(),
        Operator::Minus => "<mo>−</mo>".to_owned(),
        Operator::Times | Operator::Over => "<mo>⋅</mo>".to_owned(),
        Operator::Compare(sign) => format!("<mo>{}</mo>", escape(sign)),
        Operator::And => "<mtext>\u{a0}and\u{a0}</mtext>".to_owned(),
        Operator::Or => "<mtext>\u{a0}or\u{a0}</mtext>".to_owned(),
    };
    let groups = match operator {
        Operator::Minus => loose(right) <= tightness,
        _ => loose(right) < tightness || matches!(right, Node::Negative(_)),
    };
    let leading = tightness == Tightness::Product && matches!(left, Node::Negative(_));
    format!("<mrow>{}{sign}{}</mrow>", wrapped(left, loose(left) < tightness && !leading), wrapped(right, groups))
}

fn call(name: &str, arguments: &[Node]) -> String {
    let function = if name == "log10" { "<msub><mi>log</mi><mn>10</mn></msub>".to_owned() } else { Symbol::named(name).mathml };
    let applied = "<mo>\u{2061}</mo>";
    if matches!(name, "ln" | "log10")
        && let [argument @ (Node::Symbol { .. } | Node::Pi | Node::Number(_))] = arguments
    {
        return format!("<mrow>{function}{applied}{}</mrow>", render(argument));
    }
    let arguments = arguments.iter().map(render).collect::<Vec<_>>().join("<mo>,</mo>");
    format!("<mrow>{function}{applied}<mrow><mo>(</mo>{arguments}<mo>)</mo></mrow></mrow>")
}
