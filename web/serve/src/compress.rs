//! The compressed forms of a file that a host can send as they are.
use std::io::{self, Write};

use flate2::Compression;
use flate2::write::GzEncoder;

/// Brotli's highest quality, and its largest ordinary window (2^22 bytes).
const BROTLI_QUALITY: i32 = 11;
const BROTLI_WINDOW: i32 = 22;

/// `contents` as Brotli (RFC 7932).
pub fn brotli(contents: &[u8]) -> io::Result<Vec<u8>> {
    let parameters = brotli::enc::BrotliEncoderParams {
        quality: BROTLI_QUALITY,
        lgwin: BROTLI_WINDOW,
        size_hint: contents.len(),
        ..Default::default()
    };
    let mut packed = Vec::new();
    brotli::BrotliCompress(&mut &contents[..], &mut packed, &parameters)?;
    Ok(packed)
}

/// `contents` as gzip (RFC 1952), without a time stamp.
pub fn gzip(contents: &[u8]) -> io::Result<Vec<u8>> {
    let mut encoder = GzEncoder::new(Vec::new(), Compression::best());
    encoder.write_all(contents)?;
    encoder.finish()
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop")]
    use std::io::Read;

    use super::*;

    #[test]
    fn both_forms_unpack_to_the_contents() {
        let contents = b"arm arm arm pin pin pin".repeat(50);
        let mut unpacked = Vec::new();
        brotli::Decompressor::new(&brotli(&contents).unwrap()[..], 4096).read_to_end(&mut unpacked).unwrap();
        assert_eq!(unpacked, contents);
        unpacked.clear();
        flate2::read::GzDecoder::new(&gzip(&contents).unwrap()[..]).read_to_end(&mut unpacked).unwrap();
        assert_eq!(unpacked, contents);
    }

    #[test]
    fn nothing_packs_too() {
        assert!(brotli(b"").is_ok() && gzip(b"").is_ok());
    }
}
