//! A formula as one line of plain text.

use syn::Path;

use crate::node::{Node, Operator, Tightness};
use crate::symbol::Symbol;

/// A line is kept in pieces, so that the same line can be shown with its symbols or with their values.
pub enum Piece {
    Words(String),
    Symbol { symbol: Symbol, path: Path },
}

pub fn pieces(node: &Node) -> Vec<Piece> {
    let mut line = Line(Vec::new());
    line.node(node);
    line.0
}

pub fn joined(pieces: &[Piece]) -> String {
    pieces
        .iter()
        .map(|piece| match piece {
            Piece::Words(words) => words.as_str(),
            Piece::Symbol { symbol, .. } => symbol.text.as_str(),
        })
        .collect()
}

/// A whole number written above the line.
pub fn raised(digits: &str) -> String {
    digits
        .chars()
        .map(|c| match c {
            '0' => '⁰',
            '1' => '¹',
            '2' => '²',
            '3' => '³',
            '4' => '⁴',
            '5' => '⁵',
            '6' => '⁶',
            '7' => '⁷',
            '8' => '⁸',
            '9' => '⁹',
            '-' | '−' => '⁻',
            other => other,
        })
        .collect()
}

struct Line(Vec<Piece>);

impl Line {
    fn words(&mut self, words: &str) {
        match self.0.last_mut() {
            Some(Piece::Words(before)) => before.push_str(words),
            _ => self.0.push(Piece::Words(words.to_owned())),
        }
    }

    fn wrapped(&mut self, node: &Node, needed: bool) {
        if needed {
            self.words("(");
        }
        self.node(node);
        if needed {
            self.words(")");
        }
    }

    fn node(&mut self, node: &Node) {
        match node {
            Node::Number(text) => self.words(text),
            Node::Pi => self.words("π"),
            Node::Symbol { symbol, path } => self.0.push(Piece::Symbol { symbol: symbol.clone(), path: path.clone() }),
            Node::Negative(inside) => {
                self.words("−");
                self.wrapped(inside, inside.tightness() < Tightness::Product);
            }
            Node::Binary { operator, left, right } => self.binary(*operator, left, right),
            Node::Power { base, exponent } => self.power(base, exponent),
            Node::Root(inside) => {
                self.words("√");
                self.wrapped(inside, inside.tightness() < Tightness::Whole);
            }
            Node::Exponential(inside) => {
                self.words("exp(");
                self.node(inside);
                self.words(")");
            }
            Node::Magnitude(inside) => {
                self.words("|");
                self.node(inside);
                self.words("|");
            }
            Node::Call { name, arguments } => self.call(name, arguments),
            Node::Cases { cases, otherwise } => {
                self.words("{ ");
                for (value, condition) in cases {
                    self.node(value);
                    self.words(" if ");
                    self.node(condition);
                    self.words("; ");
                }
                self.node(otherwise);
                self.words(" otherwise }");
            }
        }
    }

    fn binary(&mut self, operator: Operator, left: &Node, right: &Node) {
        let tightness = operator.tightness();
        // A quotient times something would otherwise invite the wrong reading a/(b·c).
        let quotient = operator == Operator::Times && matches!(left, Node::Binary { operator: Operator::Over, .. });
        // A sign in front of a product needs no parentheses.
        let sign = tightness == Tightness::Product && matches!(left, Node::Negative(_));
        self.wrapped(left, (left.tightness() < tightness && !sign) || quotient);
        self.words(&match operator {
            Operator::Plus => " + ".to_owned(),
            Operator::Minus => " − ".to_owned(),
            Operator::Times => "·".to_owned(),
            Operator::Over => "/".to_owned(),
            Operator::Compare(sign) => format!(" {sign} "),
            Operator::And => " and ".to_owned(),
            Operator::Or => " or ".to_owned(),
        });
        let groups = match operator {
            Operator::Minus | Operator::Over => right.tightness() <= tightness,
            // Sums and products may be regrouped without changing them, save that a quotient on the right would read as the left's.
            Operator::Times => right.tightness() < tightness || matches!(right, Node::Binary { operator: Operator::Over, .. }),
            _ => right.tightness() < tightness || matches!(right, Node::Negative(_)),
        };
        self.wrapped(right, groups);
    }

    fn power(&mut self, base: &Node, exponent: &Node) {
        self.wrapped(base, base.tightness() < Tightness::Whole || matches!(base, Node::Call { .. }));
        match whole(exponent) {
            Some(digits) => self.words(&raised(&digits)),
            None => {
                self.words("^");
                let bare =
                    exponent.tightness() == Tightness::Whole || matches!(exponent, Node::Negative(n) if matches!(**n, Node::Number(_)));
                self.wrapped(exponent, !bare);
            }
        }
    }

    fn call(&mut self, name: &str, arguments: &[Node]) {
        let logarithm = matches!(name, "ln" | "log10");
        self.words(&function(name));
        if logarithm && let [argument @ (Node::Symbol { .. } | Node::Pi | Node::Number(_))] = arguments {
            self.words(" ");
            self.node(argument);
            return;
        }
        self.words("(");
        for (index, argument) in arguments.iter().enumerate() {
            if index > 0 {
                self.words(", ");
            }
            self.node(argument);
        }
        self.words(")");
    }
}

/// A function's name as people write it.
pub fn function(name: &str) -> String {
    if name == "log10" { "log₁₀".to_owned() } else { Symbol::named(name).text }
}

/// The digits of a whole number that can stand raised above the line.
fn whole(node: &Node) -> Option<String> {
    match node {
        Node::Number(text) if text.chars().all(|c| c.is_ascii_digit()) => Some(text.clone()),
        Node::Negative(inside) => whole(inside).map(|digits| format!("-{digits}")),
        _ => None,
    }
}
