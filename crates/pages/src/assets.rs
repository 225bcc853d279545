//! Our own few files. Each is served under a name that holds a hash of its content, so that a browser may keep it for good.

use std::sync::LazyLock;

use axum::http::StatusCode;
use axum::http::header::{CACHE_CONTROL, CONTENT_TYPE};
use axum::response::{IntoResponse, Response};
use sha2::{Digest, Sha256};

const FILES: [(&str, &str, &str); 6] = [
    ("style.css", "text/css; charset=utf-8", include_str!("../assets/style.css")),
    ("paper.css", "text/css; charset=utf-8", include_str!("../assets/paper.css")),
    ("paper-a4.css", "text/css; charset=utf-8", include_str!("../assets/paper-a4.css")),
    ("paper-letter.css", "text/css; charset=utf-8", include_str!("../assets/paper-letter.css")),
    ("marks.svg", "image/svg+xml", include_str!("../assets/marks.svg")),
    ("icon.svg", "image/svg+xml", include_str!("../assets/icon.svg")),
];

/// Our own files under their hashed names.
pub(crate) struct Assets(Vec<Asset>);

struct Asset {
    name: &'static str,
    hashed: String,
    kind: &'static str,
    content: &'static str,
}

impl Assets {
    pub(crate) fn get() -> &'static Self {
        static ASSETS: LazyLock<Assets> = LazyLock::new(|| Assets(FILES.iter().map(hashed).collect()));
        &ASSETS
    }

    /// The address of a file, below the base path.
    pub(crate) fn path(&self, name: &str) -> String {
        let hashed = self.0.iter().find(|asset| asset.name == name).map_or(name, |asset| &asset.hashed);
        format!("/assets/{hashed}")
    }

    /// What stands in a file.
    pub(crate) fn content(&self, name: &str) -> &'static str {
        self.0.iter().find(|asset| asset.name == name).map_or("", |asset| asset.content)
    }

    /// The file under its hashed name.
    pub(crate) fn answer(&self, hashed: &str) -> Response {
        match self.0.iter().find(|asset| asset.hashed == hashed) {
            Some(asset) => {
                let headers = [(CONTENT_TYPE, asset.kind), (CACHE_CONTROL, "public, max-age=31536000, immutable")];
                (headers, asset.content).into_response()
            }
            None => StatusCode::NOT_FOUND.into_response(),
        }
    }
}

fn hashed((name, kind, content): &(&'static str, &'static str, &'static str)) -> Asset {
    let hash: String = Sha256::digest(content).iter().take(6).map(|byte| format!("{byte:02x}")).collect();
    let hashed = name.split_once('.').map_or_else(|| hash.clone(), |(stem, ending)| format!("{stem}-{hash}.{ending}"));
    Asset { name, hashed, kind, content }
}
