//! A text as it stands in the browser's storage: with the time it was written, and a checksum by which damage and foreign texts are seen.

/// A text and when it was written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Entry {
    /// Milliseconds; rises with every write of the same tab.
    pub stamp: u64,
    /// The text.
    pub text: String,
}

impl Entry {
    /// Stamp, checksum and text, with spaces between them.
    pub fn write(&self) -> String {
        format!("{} {:08x} {}", self.stamp, self.checksum(), self.text)
    }

    /// None where it is no entry, or a damaged one.
    pub fn read(written: &str) -> Option<Self> {
        let mut parts = written.splitn(3, ' ');
        let stamp = parts.next()?.parse().ok()?;
        let checksum = u32::from_str_radix(parts.next()?, 16).ok()?;
        let entry = Self { stamp, text: parts.next()?.to_owned() };
        (entry.checksum() == checksum).then_some(entry)
    }

    fn checksum(&self) -> u32 {
        fnv(self.stamp.to_le_bytes().into_iter().chain(self.text.bytes()))
    }
}

/// FNV-1a (Fowler, Noll and Vo, 32 bit; basis and prime from memory).
pub fn fnv(bytes: impl Iterator<Item = u8>) -> u32 {
    const BASIS: u32 = 0x811c_9dc5;
    const PRIME: u32 = 0x0100_0193;
    bytes.fold(BASIS, |hash, byte| (hash ^ u32::from(byte)).wrapping_mul(PRIME))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_kept_is_read_back_and_damage_is_seen() {
        let entry = Entry { stamp: 7, text: "a.lm25hda.~My lift\nline".into() };
        let text = entry.write();
        assert_eq!(Entry::read(&text), Some(entry));
        assert_eq!(Entry::read(&text.replace("25", "26")), None);
        assert_eq!(Entry::read(&text.replace('7', "8")), None);
        assert_eq!(Entry::read(&text[..text.len() - 1]), None);
        for foreign in ["", "7", "7 x y", "{\"a\": 1}"] {
            assert_eq!(Entry::read(foreign), None, "{foreign}");
        }
    }
}
