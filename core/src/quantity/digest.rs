//! A short number that tells two contents apart.

/// FNV-1a, 64 bit (Fowler, Noll and Vo; RFC 9923): for finding out that something has changed, not against those who want it to look unchanged.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Digest(u64);

impl Default for Digest {
    fn default() -> Self {
        Self(0xcbf2_9ce4_8422_2325)
    }
}

impl Digest {
    /// With more bytes after it.
    #[must_use]
    pub fn with(self, bytes: &[u8]) -> Self {
        const PRIME: u64 = 0x0100_0000_01b3;
        Self(bytes.iter().fold(self.0, |hash, byte| (hash ^ u64::from(*byte)).wrapping_mul(PRIME)))
    }

    /// Sixteen hexadecimal digits.
    #[must_use]
    pub fn text(self) -> String {
        format!("{:016x}", self.0)
    }
}

#[cfg(test)]
mod tests {
    use super::Digest;

    /// RFC 9923, appendix on test vectors; these three from memory.
    #[test]
    fn known_texts_have_their_known_digests() {
        for (text, digest) in
            [("", "cbf29ce484222325"), ("a", "af63dc4c8601ec8c"), ("foobar", "85944171f73967e8")]
        {
            assert_eq!(Digest::default().with(text.as_bytes()).text(), digest);
        }
    }
}
