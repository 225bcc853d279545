//! What stands between the macro's parentheses, and the code it becomes.

use proc_macro2::{Span, TokenStream};
use quote::{ToTokens, quote};
use syn::parse::{Parse, ParseStream};
use syn::{BinOp, Expr, ExprBinary, Ident, LitStr, Path, Token, bracketed, parenthesized};

use crate::node::Node;
use crate::symbol::Symbol;
use crate::{mathml, text};

/// What stands in the brackets after a symbol.
enum Unit {
    Bare,
    Words(LitStr),
    Typed(Path),
}

impl Unit {
    fn parse(input: ParseStream) -> syn::Result<Self> {
        let inside;
        bracketed!(inside in input);
        if inside.is_empty() {
            Ok(Self::Bare)
        } else if inside.peek(LitStr) {
            inside.parse().map(Self::Words)
        } else {
            inside.parse().map(Self::Typed)
        }
    }

    fn text(&self) -> TokenStream {
        match self {
            Self::Bare => quote!(""),
            Self::Words(words) => words.to_token_stream(),
            Self::Typed(path) => quote!(<#path as ::uom::si::Unit>::abbreviation()),
        }
    }
}

/// `r, T_1 [kelvin]`: how every one of the macros begins.
struct Head {
    recorder: Ident,
    name: Ident,
    unit: Unit,
}

impl Parse for Head {
    fn parse(input: ParseStream) -> syn::Result<Self> {
        let recorder = input.parse()?;
        input.parse::<Token![,]>()?;
        Ok(Self { recorder, name: input.parse()?, unit: Unit::parse(input)? })
    }
}

impl Head {
    fn symbol(&self) -> TokenStream {
        let symbol = Symbol::named(&self.name.to_string());
        let (text, mathml) = (symbol.text, symbol.mathml);
        quote!(::formulas::working::Symbol { text: #text, mathml: #mathml })
    }

    fn record(&self, value: TokenStream, shown: &Shown, residual: TokenStream, source: &Expr) -> TokenStream {
        let (symbol, unit, recorder) = (self.symbol(), self.unit.text(), &self.recorder);
        let (text, mathml, filled) = (&shown.text, &shown.mathml, &shown.filled);
        let keeps = keeps();
        quote! {
            if #keeps {
                ::formulas::working::Recorder::step(&mut *#recorder, ::formulas::working::Step {
                    symbol: #symbol,
                    value: #value,
                    unit: #unit,
                    text: #text,
                    mathml: #mathml,
                    filled: ::formulas::working::fill(&[#(#filled),*]),
                    residual: #residual,
                    source: #source,
                });
            }
        }
    }
}

/// The recorder's type parameter belongs to the caller's function, so it is named with the caller's span.
fn keeps() -> TokenStream {
    let parameter = Ident::new("R", Span::call_site());
    quote!(#parameter::KEEPS)
}

/// An expression as people read it, three times over.
struct Shown {
    text: String,
    mathml: String,
    filled: Vec<TokenStream>,
}

impl Shown {
    fn of(expression: &Expr, unknown: Option<&Ident>) -> syn::Result<Self> {
        let node = Node::read(expression)?;
        let pieces = text::pieces(&node);
        let filled = pieces
            .iter()
            .map(|piece| match piece {
                text::Piece::Words(words) => quote!(::formulas::working::Part::Text(#words)),
                text::Piece::Symbol { symbol, path } if unknown.is_some_and(|name| path.is_ident(name)) => {
                    let text = &symbol.text;
                    quote!(::formulas::working::Part::Text(#text))
                }
                text::Piece::Symbol { path, .. } => quote!(::formulas::working::Part::Value(::core::convert::Into::<f64>::into(#path))),
            })
            .collect();
        Ok(Self { text: text::joined(&pieces), mathml: mathml::render(&node), filled })
    }
}

pub struct Given {
    head: Head,
    value: Expr,
    words: LitStr,
}

impl Parse for Given {
    fn parse(input: ParseStream) -> syn::Result<Self> {
        let head = input.parse()?;
        input.parse::<Token![=]>()?;
        let value = input.parse()?;
        input.parse::<Token![,]>()?;
        let words = input.parse()?;
        input.parse::<Option<Token![,]>>()?;
        Ok(Self { head, value, words })
    }
}

impl Given {
    pub fn expand(&self) -> TokenStream {
        let (name, value, words, recorder) = (&self.head.name, &self.value, &self.words, &self.head.recorder);
        let number = match &self.head.unit {
            Unit::Typed(unit) => quote!((#value).get::<#unit>()),
            Unit::Bare | Unit::Words(_) => value.to_token_stream(),
        };
        let (symbol, unit, keeps) = (self.head.symbol(), self.head.unit.text(), keeps());
        quote! {
            let #name: f64 = #number;
            if #keeps {
                ::formulas::working::Recorder::given(
                    &mut *#recorder,
                    ::formulas::working::Given { symbol: #symbol, value: #name, unit: #unit, words: #words },
                );
            }
        }
    }
}

pub struct Step {
    head: Head,
    expression: Expr,
    source: Expr,
}

impl Parse for Step {
    fn parse(input: ParseStream) -> syn::Result<Self> {
        let head = input.parse()?;
        input.parse::<Token![=]>()?;
        let expression = input.parse()?;
        input.parse::<Token![,]>()?;
        let source = input.parse()?;
        input.parse::<Option<Token![,]>>()?;
        Ok(Self { head, expression, source })
    }
}

impl Step {
    pub fn expand(&self) -> syn::Result<TokenStream> {
        let shown = Shown::of(&self.expression, None)?;
        let (name, expression) = (&self.head.name, &self.expression);
        // The filled-in expression may read an earlier value that this step's own name hides, so it is bound to the name last.
        let value = Ident::new("value", Span::mixed_site());
        let record = self.head.record(quote!(#value), &shown, quote!(::core::option::Option::None), &self.source);
        Ok(quote! {
            let #value: f64 = #expression;
            #record
            let #name: f64 = #value;
        })
    }
}

pub struct Solve {
    head: Head,
    bounds: (Expr, Expr),
    left: Expr,
    right: Expr,
    source: Expr,
}

impl Parse for Solve {
    fn parse(input: ParseStream) -> syn::Result<Self> {
        let head = input.parse()?;
        input.parse::<Token![in]>()?;
        let inside;
        parenthesized!(inside in input);
        let low = inside.parse()?;
        inside.parse::<Token![,]>()?;
        let high = inside.parse()?;
        input.parse::<Token![:]>()?;
        let equation: Expr = input.parse()?;
        input.parse::<Token![,]>()?;
        let source = input.parse()?;
        input.parse::<Option<Token![,]>>()?;
        match equation {
            Expr::Binary(ExprBinary { left, op: BinOp::Eq(_), right, .. }) => {
                Ok(Self { head, bounds: (low, high), left: *left, right: *right, source })
            }
            other => Err(syn::Error::new_spanned(other, "`solve!` needs an equation: write `left == right`")),
        }
    }
}

impl Solve {
    pub fn expand(&self) -> syn::Result<TokenStream> {
        let (left, right, name) = (&self.left, &self.right, &self.head.name);
        let equation: Expr = syn::parse_quote!(#left == #right);
        let shown = Shown::of(&equation, Some(name))?;
        let (low, high) = &self.bounds;
        let root = Ident::new("root", Span::mixed_site());
        let what = Symbol::named(&name.to_string()).text;
        let record = self.head.record(quote!(#root.at), &shown, quote!(::core::option::Option::Some(#root.residual)), &self.source);
        Ok(quote! {
            let #root = ::formulas::working::root(#what, |#name: f64| (#left) - (#right), (#low, #high))?;
            #record
            let #name: f64 = #root.at;
        })
    }
}
