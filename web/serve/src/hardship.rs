//! The server under people who mean it no good, over real connections.
#![allow(clippy::unwrap_used, reason = "a test may stop")]

use std::fs;
use std::io::{Read, Write};
use std::net::{SocketAddr, TcpStream};
use std::thread;
use std::time::{Duration, Instant};

use crate::connections::Patience;
use crate::scratch::Scratch;
use crate::serve::{listen, run};

const IMPATIENT: Patience =
    Patience { head: Duration::from_millis(400), whole: Duration::from_secs(20), connections: 64 };

/// A page with a secret beside its folder, served until the test ends.
struct Server {
    address: SocketAddr,
    _scratch: Scratch,
}

impl Server {
    fn start() -> Self {
        let scratch = Scratch::new();
        let dist = scratch.join("dist");
        fs::create_dir_all(dist.join("v1")).unwrap();
        fs::write(scratch.join("secret.txt"), "secret").unwrap();
        fs::write(dist.join("index.html"), "<p>page</p>").unwrap();
        fs::write(dist.join("v1/page_bg.wasm"), vec![7; 2_000_000]).unwrap();
        let (listener, address) = listen(Some(0)).unwrap();
        // Ends with the test program.
        thread::spawn(move || run(listener, &dist, IMPATIENT));
        Self { address, _scratch: scratch }
    }

    fn connect(&self) -> TcpStream {
        let stream = TcpStream::connect(self.address).unwrap();
        stream.set_read_timeout(Some(Duration::from_secs(10))).unwrap();
        stream
    }

    /// What comes back to some bytes until the server closes.
    fn say(&self, bytes: &[u8]) -> Vec<u8> {
        let mut stream = self.connect();
        // Refused half way where the head is too long.
        let _ = stream.write_all(bytes);
        let mut answer = Vec::new();
        let _ = stream.read_to_end(&mut answer);
        answer
    }

    fn ask(&self, path: &[u8]) -> Vec<u8> {
        self.say(&[b"GET ", path, b" HTTP/1.1\r\nhost: x\r\nconnection: close\r\n\r\n"].concat())
    }

    fn is_up(&self) -> bool {
        self.ask(b"/").starts_with(b"HTTP/1.1 200")
    }
}

#[test]
fn odd_paths_lead_nowhere() {
    let server = Server::start();
    let long = [b"/".to_vec(), vec![b'a'; 9000]].concat();
    // One more than a name may have on most file systems.
    let long_name = [b"/".to_vec(), vec![b'a'; 256]].concat();
    let paths: [&[u8]; 28] = [
        b"/../secret.txt",
        b"/v1/../../secret.txt",
        b"/%2e%2e/secret.txt",
        b"/%2E%2E%2Fsecret.txt",
        b"/..%2fsecret.txt",
        b"/v1/..%2f..%2fsecret.txt",
        b"/%252e%252e/secret.txt",
        b"/%252e%252e%252fsecret.txt",
        b"/..%5csecret.txt",
        b"/%2e%2e%5csecret.txt",
        b"/..\\secret.txt",
        b"//secret.txt",
        b"//../secret.txt",
        b"/./../secret.txt",
        b"/v1/%00/../../secret.txt",
        b"/index.html%00.txt",
        b"/index.html\x00",
        b"/%ff%fe",
        b"/\xff\xfe",
        b"/C:/secret.txt",
        b"/c%3a%5csecret.txt",
        b"/etc/passwd",
        b"file:///etc/passwd",
        b"/%",
        b"../secret.txt",
        b"/index.html/secret.txt",
        &long_name,
        &long,
    ];
    for path in paths {
        let answer = server.ask(path);
        let shown = String::from_utf8_lossy(path);
        assert!(
            answer.is_empty() || answer.starts_with(b"HTTP/1.1 4"),
            "{shown}: {}",
            String::from_utf8_lossy(&answer)
        );
        assert!(!answer.windows(6).any(|part| part == b"secret"), "{shown}");
    }
    // What stands after a question mark is none of the path.
    assert!(server.ask(b"/?../secret.txt").starts_with(b"HTTP/1.1 200"));
    assert!(server.is_up());
}

#[test]
fn a_link_in_the_folder_is_not_served() {
    let scratch = Scratch::new();
    let dist = scratch.join("dist");
    fs::create_dir_all(&dist).unwrap();
    fs::write(scratch.join("secret.txt"), "secret").unwrap();
    fs::write(dist.join("index.html"), "<p>page</p>").unwrap();
    assert!(crate::serve::check(&dist).is_ok());
    #[cfg(unix)]
    {
        std::os::unix::fs::symlink(scratch.join("secret.txt"), dist.join("open.txt")).unwrap();
        let refusal = crate::serve::check(&dist).unwrap_err().to_string();
        assert!(refusal.contains("open.txt"), "{refusal}");
    }
}

#[test]
fn only_reading_is_answered() {
    let server = Server::start();
    for method in ["POST", "PUT", "DELETE", "PATCH", "OPTIONS", "TRACE", "CONNECT"] {
        let answer = server.say(
            format!("{method} / HTTP/1.1\r\nhost: x\r\ncontent-length: 0\r\nconnection: close\r\n\r\n")
                .as_bytes(),
        );
        assert!(answer.starts_with(b"HTTP/1.1 4"), "{method}: {}", String::from_utf8_lossy(&answer));
    }
    let head = server.say(b"HEAD / HTTP/1.1\r\nhost: x\r\nconnection: close\r\n\r\n");
    assert!(head.starts_with(b"HTTP/1.1 200") && head.ends_with(b"\r\n\r\n"));
}

#[test]
fn nonsense_ends_its_own_connection_only() {
    let server = Server::start();
    let long_header =
        [b"GET / HTTP/1.1\r\nhost: ".to_vec(), vec![b'x'; 900_000], b"\r\n\r\n".to_vec()].concat();
    let many_headers = [b"GET / HTTP/1.1\r\n".to_vec(), b"a: b\r\n".repeat(1000), b"\r\n".to_vec()].concat();
    let cases: [&[u8]; 9] = [
        b"",
        b"\r\n\r\n",
        b"\x16\x03\x01\x02\x00\x01\x00\x01\xfc\x03\x03",
        b"GET / HTTP/9.9\r\n\r\n",
        b"GET\r\n\r\n",
        b"GET / HTTP/1.1\r\nhost: x\r\ncontent-length: -5\r\n\r\n",
        b"GET / HTTP/1.1\r\nhost: x\r\ntransfer-encoding: chunked\r\n\r\nzz\r\n",
        &long_header,
        &many_headers,
    ];
    for case in cases {
        let _ = server.say(case);
    }
    // Asked for much and gone.
    for _ in 0..50 {
        server.connect().write_all(b"GET /v1/page_bg.wasm HTTP/1.1\r\nhost: x\r\n\r\n").unwrap();
    }
    assert!(server.is_up());
}

/// Connections that never say what they want fill every place, and are let go.
#[test]
fn dawdlers_are_let_go() {
    let server = Server::start();
    let dawdlers: Vec<TcpStream> = (0..IMPATIENT.connections)
        .map(|_| {
            let mut stream = server.connect();
            stream.write_all(b"GET / HT").unwrap();
            stream
        })
        .collect();
    let begun = Instant::now();
    assert!(server.is_up());
    // Long before the patience with a whole request ends.
    assert!(begun.elapsed() < IMPATIENT.whole / 2, "{:?}", begun.elapsed());
    for mut stream in dawdlers {
        let mut rest = Vec::new();
        // Either is an end.
        let _ = stream.read_to_end(&mut rest);
    }
    // Readers that take nothing of what they asked for keep nobody else waiting.
    let readers: Vec<TcpStream> = (0..IMPATIENT.connections / 2)
        .map(|_| {
            let mut stream = server.connect();
            stream.write_all(b"GET /v1/page_bg.wasm HTTP/1.1\r\nhost: x\r\n\r\n").unwrap();
            stream
        })
        .collect();
    let begun = Instant::now();
    assert!(server.is_up());
    assert!(begun.elapsed() < IMPATIENT.whole / 2, "{:?}", begun.elapsed());
    drop(readers);
}

#[test]
fn ten_thousand_requests_are_all_answered() {
    const THREADS: usize = 20;
    const KEPT: usize = 400;
    const CLOSED: usize = 100;
    let server = Server::start();
    let good: usize = thread::scope(|scope| {
        let threads: Vec<_> = (0..THREADS).map(|_| scope.spawn(|| talk(&server, KEPT, CLOSED))).collect();
        threads.into_iter().map(|thread| thread.join().unwrap()).sum()
    });
    assert_eq!(good, THREADS * (KEPT + CLOSED));
    assert!(server.is_up());
}

/// So many requests over one connection, then so many over one each; how many were answered well.
fn talk(server: &Server, kept: usize, closed: usize) -> usize {
    const BODY: &[u8] = b"<p>page</p>";
    let mut stream = server.connect();
    let mut good = 0;
    for _ in 0..kept {
        stream.write_all(b"GET / HTTP/1.1\r\nhost: x\r\n\r\n").unwrap();
        let mut answer = Vec::new();
        let mut part = [0; 2048];
        while !answer.ends_with(BODY) {
            let read = stream.read(&mut part).unwrap();
            assert!(read > 0, "the connection was closed");
            answer.extend_from_slice(&part[..read]);
        }
        good += usize::from(answer.starts_with(b"HTTP/1.1 200"));
    }
    good + (0..closed).filter(|_| server.is_up()).count()
}
