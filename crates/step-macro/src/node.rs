//! The part of Rust's expressions that can be shown as a formula, read from the tokens that are also compiled.

use syn::spanned::Spanned;
use syn::{BinOp, Block, Expr, Lit, Path, Stmt, UnOp};

use crate::symbol::Symbol;

/// A formula as it is read, free of the parentheses it was typed with.
pub enum Node {
    Number(String),
    Pi,
    Symbol { symbol: Symbol, path: Path },
    Negative(Box<Node>),
    Binary { operator: Operator, left: Box<Node>, right: Box<Node> },
    Power { base: Box<Node>, exponent: Box<Node> },
    Root(Box<Node>),
    Exponential(Box<Node>),
    Magnitude(Box<Node>),
    Call { name: String, arguments: Vec<Node> },
    Cases { cases: Vec<(Node, Node)>, otherwise: Box<Node> },
}

/// What stands between two operands.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Operator {
    Plus,
    Minus,
    Times,
    Over,
    Compare(&'static str),
    And,
    Or,
}

/// How tightly a formula holds together; a looser one inside a tighter one needs parentheses.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Tightness {
    Cases,
    Or,
    And,
    Comparison,
    Sum,
    Product,
    Power,
    Whole,
}

impl Operator {
    pub fn tightness(self) -> Tightness {
        match self {
            Self::Plus | Self::Minus => Tightness::Sum,
            Self::Times | Self::Over => Tightness::Product,
            Self::Compare(_) => Tightness::Comparison,
            Self::And => Tightness::And,
            Self::Or => Tightness::Or,
        }
    }

    fn read(operator: &BinOp) -> syn::Result<Self> {
        Ok(match operator {
            BinOp::Add(_) => Self::Plus,
            BinOp::Sub(_) => Self::Minus,
            BinOp::Mul(_) => Self::Times,
            BinOp::Div(_) => Self::Over,
            BinOp::Lt(_) => Self::Compare("<"),
            BinOp::Le(_) => Self::Compare("≤"),
            BinOp::Gt(_) => Self::Compare(">"),
            BinOp::Ge(_) => Self::Compare("≥"),
            BinOp::Eq(_) => Self::Compare("="),
            BinOp::Ne(_) => Self::Compare("≠"),
            BinOp::And(_) => Self::And,
            BinOp::Or(_) => Self::Or,
            other => return Err(syn::Error::new(other.span(), "a formula cannot show this operator")),
        })
    }
}

impl Node {
    pub fn tightness(&self) -> Tightness {
        match self {
            Self::Number(text) if text.contains('×') => Tightness::Product,
            Self::Number(text) if !text.is_ascii() => Tightness::Power,
            Self::Number(_) | Self::Pi | Self::Symbol { .. } | Self::Magnitude(_) | Self::Call { .. } => Tightness::Whole,
            // A sign in front reads like the first term of a sum.
            Self::Negative(_) => Tightness::Sum,
            Self::Binary { operator, .. } => operator.tightness(),
            Self::Power { .. } | Self::Root(_) | Self::Exponential(_) => Tightness::Power,
            Self::Cases { .. } => Tightness::Cases,
        }
    }

    pub fn read(expression: &Expr) -> syn::Result<Self> {
        match expression {
            Expr::Paren(inside) => Self::read(&inside.expr),
            Expr::Group(inside) => Self::read(&inside.expr),
            Expr::Lit(literal) => number(&literal.lit),
            Expr::Path(path) if path.qself.is_none() => Self::name(&path.path),
            Expr::Unary(unary) => match unary.op {
                UnOp::Neg(_) => Ok(Self::Negative(Box::new(Self::read(&unary.expr)?))),
                _ => Err(syn::Error::new_spanned(unary, "a formula cannot show this sign; write the value it stands for as a `given!`")),
            },
            Expr::Binary(binary) => Ok(Self::Binary {
                operator: Operator::read(&binary.op)?,
                left: Box::new(Self::read(&binary.left)?),
                right: Box::new(Self::read(&binary.right)?),
            }),
            Expr::Call(call) => Self::call(call),
            Expr::If(_) => Self::cases(expression),
            Expr::MethodCall(method) => Err(syn::Error::new_spanned(
                method,
                "a formula cannot show a method: write it as a call, such as `sqrt(x)` or `pow(x, 2.0)`",
            )),
            Expr::Field(field) => {
                Err(syn::Error::new_spanned(field, "a formula cannot show a field: bind it to a symbol with `given!` first"))
            }
            other => {
                Err(syn::Error::new_spanned(other, "a formula cannot show this: use + - * /, calls, names, numbers and `if … else …`"))
            }
        }
    }

    fn name(path: &Path) -> syn::Result<Self> {
        let Some(last) = path.segments.last().filter(|last| last.arguments.is_none()) else {
            return Err(syn::Error::new_spanned(path, "a formula cannot show this path"));
        };
        if last.ident == "PI" {
            return Ok(Self::Pi);
        }
        Ok(Self::Symbol { symbol: Symbol::named(&last.ident.to_string()), path: path.clone() })
    }

    fn call(call: &syn::ExprCall) -> syn::Result<Self> {
        let Expr::Path(function) = &*call.func else {
            return Err(syn::Error::new_spanned(&call.func, "a formula can only call a function by its name"));
        };
        let Some(name) = function.path.segments.last().map(|last| last.ident.to_string()) else {
            return Err(syn::Error::new_spanned(function, "a formula can only call a function by its name"));
        };
        let mut arguments = call.args.iter().map(Self::read).collect::<syn::Result<Vec<_>>>()?;
        let wanted = match name.as_str() {
            "pow" | "min" | "max" => Some(2),
            "sqrt" | "exp" | "ln" | "log10" | "abs" => Some(1),
            _ => None,
        };
        if wanted.is_some_and(|wanted| wanted != arguments.len()) {
            return Err(syn::Error::new_spanned(call, format!("`{name}` takes {} value(s)", wanted.unwrap_or_default())));
        }
        let mut next = || arguments.remove(0).into();
        Ok(match name.as_str() {
            "pow" => Self::Power { base: next(), exponent: next() },
            "sqrt" => Self::Root(next()),
            "exp" => Self::Exponential(next()),
            "abs" => Self::Magnitude(next()),
            _ => Self::Call { name, arguments },
        })
    }

    fn cases(expression: &Expr) -> syn::Result<Self> {
        let mut cases = Vec::new();
        let mut rest = expression;
        loop {
            match rest {
                Expr::If(branch) => {
                    cases.push((Self::read(only(&branch.then_branch)?)?, Self::read(&branch.cond)?));
                    let Some((_, otherwise)) = &branch.else_branch else {
                        return Err(syn::Error::new_spanned(branch, "a formula needs the `else` of this `if`"));
                    };
                    rest = otherwise;
                }
                Expr::Block(block) => {
                    let otherwise = Box::new(Self::read(only(&block.block)?)?);
                    return Ok(Self::Cases { cases, otherwise });
                }
                other => return Err(syn::Error::new_spanned(other, "a formula cannot show this branch")),
            }
        }
    }
}

fn only(block: &Block) -> syn::Result<&Expr> {
    match block.stmts.as_slice() {
        [Stmt::Expr(expression, None)] => Ok(expression),
        _ => Err(syn::Error::new_spanned(block, "a branch of a formula holds one expression and nothing else")),
    }
}

fn number(literal: &Lit) -> syn::Result<Node> {
    let value = match literal {
        Lit::Float(float) => float.base10_parse::<f64>()?,
        Lit::Int(integer) => integer.base10_parse::<f64>()?,
        other => return Err(syn::Error::new_spanned(other, "a formula shows numbers only")),
    };
    let size = value.abs();
    // Zeros are easy to count up to here; beyond, a power of ten is easier to read.
    if size == 0.0 || (1e-4..1e7).contains(&size) {
        return Ok(Node::Number(format!("{value}")));
    }
    let scientific = format!("{value:e}");
    let (mantissa, exponent) = scientific.split_once('e').unwrap_or((&scientific, "0"));
    let power = format!("10{}", crate::text::raised(exponent));
    Ok(Node::Number(if mantissa == "1" { power } else { format!("{mantissa}×{power}") }))
}
