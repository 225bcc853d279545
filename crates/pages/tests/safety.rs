//! The guard in front of the real router. What each check holds against is named beside it.

#[expect(dead_code, reason = "the tests of a kept shop use the rest of it")]
mod common;

use std::sync::Mutex;
use std::time::Duration;

use axum::body::Body;
use axum::http::{Request, StatusCode};
use common::{PASSPHRASE, app, example, from, get, local, open, pages, post, send, session, with};
use pages::{App, BasePath, Identity, Origin, Settings, SettingsError, ShopSource, router};

const RIGHT: &str = "passphrase=kettle+harbour+nine+owls&next=%2Fladder";

#[tokio::test]
async fn a_form_from_another_site_is_refused() {
    // OWASP Cross-Site Request Forgery Prevention Cheat Sheet: verify the origin with standard headers; fetch metadata.
    let pages = pages(local());
    assert_eq!(send(&pages, post("/units", "units=inch&back=%2F")).await.status, StatusCode::SEE_OTHER);
    for (name, value) in [
        ("origin", "http://elsewhere.example"),
        ("origin", "null"),
        ("origin", "https://127.0.0.1:8087"),
        ("origin", "http://127.0.0.1:9999"),
        ("sec-fetch-site", "cross-site"),
        ("sec-fetch-site", "same-site"),
        ("sec-fetch-site", "none"),
    ] {
        let answer = send(&pages, with(post("/units", "units=inch&back=%2F"), name, value)).await;
        assert_eq!(answer.status, StatusCode::FORBIDDEN, "{name}: {value}");
        assert!(answer.headers.get("set-cookie").is_none());
    }
    let mut silent = post("/units", "units=inch");
    silent.headers_mut().remove("origin");
    assert_eq!(send(&pages, silent).await.status, StatusCode::FORBIDDEN);
}

#[tokio::test]
async fn a_name_that_anybody_could_own_is_not_answered_to() {
    // DNS rebinding: RFC 9110 section 17.1 on establishing authority; 421 from section 15.5.20.
    let pages = pages(local());
    for host in ["127.0.0.1:8087", "localhost:8087", "LOCALHOST", "[::1]:8087"] {
        assert_eq!(send(&pages, with(get("/"), "host", host)).await.status, StatusCode::OK, "{host}");
    }
    for host in ["elsewhere.example", "127.0.0.1.elsewhere.example", "192.168.1.7:8087", "me@localhost", "", "localhost.example"] {
        let answer = send(&pages, with(get("/"), "host", host)).await;
        assert_eq!(answer.status, StatusCode::MISDIRECTED_REQUEST, "{host}");
        assert!(!answer.text.contains("Alder"));
    }
    let mut twice = get("/");
    twice.headers_mut().append("host", "elsewhere.example".parse().unwrap());
    assert_eq!(send(&pages, twice).await.status, StatusCode::MISDIRECTED_REQUEST);
}

#[tokio::test]
async fn opened_to_the_network_it_answers_to_its_number_and_to_the_name_it_was_given() {
    let origin = Some(Origin::parse("https://garage.example").unwrap());
    let pages = pages(Settings { origin, ..open() });
    for host in ["192.168.1.7:8087", "garage.example", "[fd00::7]:8087"] {
        assert_eq!(send(&pages, with(get("/health"), "host", host)).await.status, StatusCode::OK, "{host}");
    }
    assert_eq!(send(&pages, with(get("/health"), "host", "other.example")).await.status, StatusCode::MISDIRECTED_REQUEST);
    let named = with(with(post("/units", "units=inch"), "host", "garage.example"), "origin", "https://garage.example");
    assert_ne!(send(&pages, named).await.status, StatusCode::FORBIDDEN);
    let plain = with(with(post("/units", "units=inch"), "host", "garage.example"), "origin", "http://garage.example");
    assert_eq!(send(&pages, plain).await.status, StatusCode::FORBIDDEN);
}

#[test]
fn without_a_passphrase_nobody_else_comes_in() {
    let origin = || Origin::parse("https://garage.example").unwrap();
    for settings in [
        Settings::local("0.0.0.0:8087".parse().unwrap()),
        Settings::local("192.168.1.7:8087".parse().unwrap()),
        Settings::local("[::]:8087".parse().unwrap()),
        Settings { origin: Some(origin()), ..local() },
    ] {
        let refused = App::new(ShopSource::file(example("alder-lock.toml")), settings, |_| {}).err();
        assert!(matches!(refused, Some(SettingsError::Open(_))));
    }
    assert!(open().check().is_ok() && local().check().is_ok());
}

#[tokio::test]
async fn without_a_passphrase_nobody_comes_in_through_a_proxy_either() {
    // RFC 7239, and the older headers it replaces.
    let alone = pages(local());
    for name in ["forwarded", "x-forwarded-for", "x-forwarded-host"] {
        assert_eq!(send(&alone, with(get("/"), name, "192.168.1.9")).await.status, StatusCode::FORBIDDEN, "{name}");
    }
    let known = pages(Settings { origin: Some(Origin::parse("http://localhost").unwrap()), ..local() });
    assert_eq!(send(&known, with(get("/"), "x-forwarded-for", "127.0.0.1")).await.status, StatusCode::OK);
}

#[tokio::test]
async fn whoever_has_not_come_in_sees_the_door_and_nothing_of_the_shop() {
    let pages = pages(open());
    for path in ["/", "/shop", "/ladder?budget=60", "/why/lathe.bed-ways", "/bench/fit", "/sources", "/nothing"] {
        let answer = send(&pages, get(path)).await;
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "{path}");
        assert!(answer.header("location").starts_with("/login?next=%2F"), "{path}");
        assert!(answer.text.is_empty());
    }
    // What is open lies open to its own name alone.
    for path in ["/assets/a/b", "/login/x", "/assets", "/health/", "//login"] {
        assert_eq!(send(&pages, get(path)).await.status, StatusCode::SEE_OTHER, "{path}");
    }
    assert_eq!(send(&pages, post("/units", "units=inch")).await.status, StatusCode::UNAUTHORIZED);
    let door = send(&pages, get("/login?next=%2Fladder")).await;
    assert_eq!(door.status, StatusCode::OK);
    assert!(!door.text.contains("Alder") && door.text.contains("value=\"/ladder\""));
    assert_eq!(send(&pages, get("/health")).await.text, "ok\n");
    let style = door.text.split("href=\"").find(|part| part.starts_with("/assets/style")).and_then(|part| part.split('"').next()).unwrap();
    assert_eq!(send(&pages, get(style)).await.status, StatusCode::OK);
}

#[tokio::test]
async fn coming_in_begins_a_new_session_whatever_was_sent() {
    // OWASP Session Management Cheat Sheet: renew the session identifier after any privilege level change.
    let pages = pages(open());
    let planted = "gallipot_session=0123456789abcdef0123456789abcdef0123456789abcdef0123456789abcdef";
    let first = send(&pages, with(post("/login", RIGHT), "cookie", planted)).await;
    assert_eq!((first.status, first.header("location")), (StatusCode::SEE_OTHER, "/ladder"));
    for word in ["HttpOnly", "SameSite=Strict", "Path=/;"] {
        assert!(first.header("set-cookie").contains(word), "{word}");
    }
    let mine = session(&first);
    assert_ne!(mine, planted);
    assert_eq!(send(&pages, with(get("/"), "cookie", planted)).await.status, StatusCode::SEE_OTHER);
    assert_eq!(send(&pages, with(get("/"), "cookie", &mine)).await.status, StatusCode::OK);
    // Two cookies of one name: somebody planted the other.
    assert_eq!(send(&pages, with(get("/"), "cookie", &format!("{mine}; {planted}"))).await.status, StatusCode::SEE_OTHER);
    let again = session(&send(&pages, with(post("/login", RIGHT), "cookie", &mine)).await);
    assert_ne!(again, mine);
    assert_eq!(send(&pages, with(get("/"), "cookie", &mine)).await.status, StatusCode::SEE_OTHER);
    let gone = send(&pages, with(post("/logout", ""), "cookie", &again)).await;
    assert!(gone.header("set-cookie").contains("Max-Age=0"));
    assert_eq!(send(&pages, with(get("/"), "cookie", &again)).await.status, StatusCode::SEE_OTHER);
}

#[tokio::test]
async fn each_wrong_answer_makes_the_next_wait() {
    // NIST SP 800-63B section 5.2.2: rate limiting of failed attempts, with a wait that grows.
    let pages = pages(open());
    let wrong = || post("/login", "passphrase=kettle+harbour+nine+cats");
    assert_eq!(send(&pages, wrong()).await.status, StatusCode::FORBIDDEN);
    let at_once = send(&pages, post("/login", RIGHT)).await;
    assert_eq!(at_once.status, StatusCode::TOO_MANY_REQUESTS);
    assert!(at_once.headers.get("set-cookie").is_none());
    assert_eq!(at_once.header("retry-after"), "1");
    // Another address is not kept out by it, and one house of IPv6 addresses counts as one.
    let elsewhere = send(&pages, from("192.168.1.9:4000", post("/login", RIGHT))).await;
    assert_eq!(elsewhere.status, StatusCode::SEE_OTHER);
    assert_eq!(send(&pages, from("[fd00::1]:4000", wrong())).await.status, StatusCode::FORBIDDEN);
    assert_eq!(send(&pages, from("[fd00::2]:4000", wrong())).await.status, StatusCode::TOO_MANY_REQUESTS);
    tokio::time::sleep(Duration::from_millis(1100)).await;
    assert_eq!(send(&pages, wrong()).await.status, StatusCode::FORBIDDEN);
    tokio::time::sleep(Duration::from_millis(1100)).await;
    let longer = send(&pages, wrong()).await;
    assert_eq!(longer.status, StatusCode::TOO_MANY_REQUESTS);
}

#[tokio::test]
async fn every_answer_tells_the_browser_to_take_nothing_from_elsewhere() {
    // OWASP HTTP Headers Cheat Sheet; Content Security Policy Level 3.
    let pages = pages(open());
    for request in
        [get("/"), get("/login"), get("/health"), get("/assets/none"), with(get("/"), "host", "elsewhere.example"), post("/x", "")]
    {
        let path = request.uri().path().to_owned();
        let answer = send(&pages, request).await;
        let policy = answer.header("content-security-policy");
        for part in ["default-src 'none'", "style-src 'self'", "frame-ancestors 'none'", "base-uri 'none'", "form-action 'self'"] {
            assert!(policy.contains(part), "{path}: {part}");
        }
        assert!(!policy.contains("unsafe") && !policy.contains("script-src"));
        assert_eq!(answer.header("x-content-type-options"), "nosniff", "{path}");
        assert_eq!(answer.header("referrer-policy"), "same-origin", "{path}");
        assert!(answer.header("permissions-policy").contains("camera=()"), "{path}");
        assert_eq!(answer.header("cache-control"), "no-store", "{path}");
    }
}

#[tokio::test]
async fn no_address_leads_out_of_the_pages() {
    // OWASP Path Traversal.
    let pages = pages(local());
    for path in [
        "/assets/../../../../etc/passwd",
        "/assets/..%2f..%2f..%2fetc%2fpasswd",
        "/assets/%2e%2e/%2e%2e/Cargo.toml",
        "/assets/%2Fetc%2Fpasswd",
        "/assets/style.css%00",
        "/why/..%2f..%2fetc%2fpasswd",
        "/chart/%2e%2e%2f%2e%2e",
        "/bench/..%5c..%5cwin.ini",
        "/why/%ff%fe",
    ] {
        let answer = send(&pages, get(path)).await;
        assert!(matches!(answer.status, StatusCode::NOT_FOUND | StatusCode::BAD_REQUEST), "{path}: {}", answer.status);
        assert!(!answer.text.contains("root:") && !answer.text.contains("[package]"), "{path}");
    }
}

#[tokio::test]
async fn a_sheet_never_reads_a_file_that_a_visitor_names() {
    let pages = pages(local());
    for sheet in bench::sheets() {
        for field in sheet.kind.fields.iter().filter(|field| matches!(field.asks, fields::Asks::File)) {
            let answer = send(&pages, get(&format!("/bench/{}?{}=%2Fetc%2Fpasswd", sheet.kind.name, field.name))).await;
            assert!(!answer.text.contains("/etc/passwd") && !answer.text.contains("root:"), "{}", sheet.kind.name);
        }
    }
}

#[tokio::test]
async fn what_people_write_is_shown_and_never_run() {
    // OWASP Cross Site Scripting Prevention Cheat Sheet.
    let evil = "<script>alert(1)</script>{{ frame.base }}\\\"'><img src=x onerror=alert(1)>";
    let text = format!(
        "name = \"{evil}\"\n[[machine]]\ntemplate = \"bench lathe\"\nname = \"{evil}\"\n[[machine.point]]\nname = \"{evil}\"\n\
         kind = \"leadscrew\"\n[[work]]\njob = \"cut\"\nname = \"{evil}\"\n[[pot]]\nfluid = \"slideway-68\"\nname = \"{evil}\"\nplace = \"{evil}\"\n"
    );
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("shop.toml");
    std::fs::write(&path, &text).unwrap();
    let pages = router(app(local(), &path));
    let typed = "%3Cscript%3Ealert(1)%3C%2Fscript%3E%22%27%3E%7B%7B";
    let mut paths: Vec<String> = ["/", "/shop", "/ladder", "/work", "/cupboard", "/cautions"].map(str::to_owned).into();
    paths.extend(
        ["/ladder?without=", "/ladder?budget=", "/why/", "/chart/", "/bench/", "/bench/fit?hole=", "/"]
            .map(|path| format!("{path}{typed}")),
    );
    for path in paths {
        let answer = send(&pages, get(&path)).await;
        assert!(!answer.text.contains("<script") && !answer.text.contains("<img"), "{path}");
        // What stands in braces is text, not a template.
        assert!(!path.contains("/shop") || answer.text.contains("{{ frame.base }}"), "{path}");
    }
    // The same for a file that is not sound, whose lines are shown.
    std::fs::write(&path, format!("{text}nonsense = \"{evil}\"\n")).unwrap();
    let broken = send(&pages, get("/ladder")).await;
    assert_eq!(broken.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(!broken.text.contains("<script") && broken.text.contains("nonsense"));
}

#[tokio::test]
async fn pages_for_reading_take_nothing_down() {
    let pages = pages(Settings { read_only: true, ..local() });
    assert_eq!(send(&pages, get("/ladder")).await.status, StatusCode::OK);
    for request in [post("/log", "what=oiled"), post("/shop", "name=x")] {
        assert_eq!(send(&pages, request).await.status, StatusCode::FORBIDDEN);
    }
    // The units are the reader's own.
    assert_eq!(send(&pages, post("/units", "units=inch&back=%2F")).await.status, StatusCode::SEE_OTHER);
}

#[tokio::test]
async fn whoever_asks_without_end_is_told_to_wait() {
    // RFC 6585 section 4: 429, with Retry-After.
    let pages = pages(open());
    let ask = || with(from("192.168.1.9:4000", get("/health")), "host", "192.168.1.7:8087");
    let mut answers = Vec::new();
    for _ in 0..200 {
        answers.push(send(&pages, ask()).await);
    }
    let late = answers.last().unwrap();
    assert_eq!((late.status, late.header("retry-after")), (StatusCode::TOO_MANY_REQUESTS, "1"));
    assert_eq!(answers[0].status, StatusCode::OK);
    assert_eq!(send(&pages, get("/health")).await.status, StatusCode::OK, "others are not kept waiting");
}

#[tokio::test]
async fn a_body_longer_than_any_form_is_refused() {
    let pages = pages(open());
    let long = format!("passphrase={}", "x".repeat(1 << 20));
    assert!(send(&pages, post("/login", &long)).await.status.is_client_error());
}

#[tokio::test]
async fn an_encrypted_connection_keeps_its_cookies_to_itself() {
    // RFC 6265 section 4.1.2.5, the Secure attribute.
    let (certificate, key) = Identity::make(&[]).unwrap();
    let identity = Some(Identity::from_pem(certificate.as_bytes(), key.as_bytes()).unwrap());
    let pages = pages(Settings { identity, ..open() });
    let plain = send(&pages, post("/login", RIGHT)).await;
    assert_eq!(plain.status, StatusCode::FORBIDDEN, "its own pages begin with https");
    let answer = send(&pages, with(post("/login", RIGHT), "origin", "https://127.0.0.1:8087")).await;
    assert!(answer.header("set-cookie").contains("; Secure"));
}

#[tokio::test]
async fn below_a_base_path_everything_stays_below_it() {
    let base_path = BasePath::parse("/shop").unwrap();
    let pages = pages(Settings { base_path, ..open() });
    assert_eq!(send(&pages, get("/shop/health")).await.text, "ok\n");
    let door = send(&pages, get("/shop/ladder?rungs=5")).await;
    assert_eq!(door.header("location"), "/shop/login?next=%2Fshop%2Fladder%3Frungs%3D5");
    let form = RIGHT.replace("%2Fladder", "%2Fshop%2Fladder");
    let inside = send(&pages, post("/shop/login", &form)).await;
    assert_eq!(inside.header("location"), "/shop/ladder");
    assert!(inside.header("set-cookie").contains("Path=/shop;"));
    let cookie = session(&inside);
    for path in ["/shop", "/shop/", "/shop/ladder"] {
        let page = send(&pages, with(get(path), "cookie", &cookie)).await;
        assert_eq!(page.status, StatusCode::OK, "{path}");
        let outside = page.text.split("href=\"/").skip(1).find(|link| !link.starts_with("shop/"));
        assert_eq!(outside, None, "{path}");
    }
    assert_eq!(send(&pages, with(get("/ladder"), "cookie", &cookie)).await.status, StatusCode::NOT_FOUND);
}

static NOTED: Mutex<Vec<String>> = Mutex::new(Vec::new());

#[tokio::test]
async fn nothing_that_was_typed_is_logged() {
    let source = ShopSource::file(example("alder-lock.toml"));
    let pages = router(App::new(source, open(), |text| NOTED.lock().unwrap().push(text.to_owned())).unwrap());
    send(&pages, post("/login", "passphrase=nearly+the+right+one&next=%2Fsecret")).await;
    send(&pages, from("192.168.1.9:4000", post("/login", RIGHT))).await;
    let noted = NOTED.lock().unwrap().join("\n");
    assert!(noted.contains("wrong passphrase"), "{noted}");
    assert!(!noted.contains("nearly") && !noted.contains("secret") && !noted.contains(PASSPHRASE), "{noted}");
}

#[tokio::test]
async fn a_request_of_another_kind_does_nothing() {
    let pages = pages(local());
    for method in ["PUT", "DELETE", "TRACE", "PATCH"] {
        let request =
            Request::builder().method(method).uri("/ladder").header("host", common::LOCAL).header("origin", "http://127.0.0.1:8087");
        let answer = send(&pages, request.body(Body::empty()).unwrap()).await;
        assert_eq!(answer.status, StatusCode::METHOD_NOT_ALLOWED, "{method}");
    }
}

/// A browser does not keep a `Secure` cookie of a plain connection (RFC 6265bis, 5.7), so whoever came past the proxy would stand at the door
/// for ever.
#[tokio::test]
async fn who_comes_past_the_proxy_over_the_bare_network_is_told_where_to_go() {
    let pages = pages(Settings { origin: Some(Origin::parse("https://shop.example").unwrap()), ..open() });
    let lan = |request| with(with(from("192.168.1.9:4000", request), "host", "192.168.1.5:8087"), "origin", "http://192.168.1.5:8087");
    let past = send(&pages, lan(post("/login", RIGHT))).await;
    assert_eq!((past.status, past.header("set-cookie")), (StatusCode::FORBIDDEN, ""));
    assert!(past.text.contains("Come in by https://shop.example"));
    // The proxy may well ask for it by that number; what counts is where the browser is.
    let through = with(with(post("/login", RIGHT), "host", "192.168.1.5:8087"), "origin", "https://shop.example");
    let through = send(&pages, through).await;
    assert_eq!(through.status, StatusCode::SEE_OTHER);
    assert!(through.header("set-cookie").contains("; Secure"));
}
