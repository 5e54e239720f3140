//! RFC 9285, "The Base45 Data Encoding": the examples of sections 4.3, 4.4 and 6.

use beetle_almanac::almanac::base45::{decode, encode};

#[test]
fn the_examples_of_the_standard() {
    // Section 4.3, three examples of encoding, and section 4.4, one of decoding.
    for (bytes, text) in
        [("AB", "BB8"), ("Hello!!", "%69 VD92EX0"), ("base-45", "UJCLQE7W581"), ("ietf!", "QED8WEX0")]
    {
        assert_eq!(encode(bytes.as_bytes()), text);
        assert_eq!(decode(text).as_deref(), Some(bytes.as_bytes()));
    }
}

/// Section 6: "FGW" is 65535 and fits into two bytes, "GGW" is 65536 and must be refused.
#[test]
fn a_value_that_no_bytes_have_is_refused() {
    assert_eq!(decode("FGW"), Some(vec![255, 255]));
    assert_eq!(decode("GGW"), None);
    assert_eq!(decode(":::"), None);
    // 255 and 256 in the two letters of a last byte.
    assert_eq!(decode("U5"), Some(vec![255]));
    assert_eq!(decode("V5"), None);
    // One letter over, and letters that are none of the 45.
    for text in ["A", "BB8A", "bb8", "BB\n", "BBÄ", "B_8"] {
        assert_eq!(decode(text), None, "{text}");
    }
}

#[test]
fn every_byte_and_every_pair_comes_back() {
    for first in 0..=255_u8 {
        assert_eq!(decode(&encode(&[first])), Some(vec![first]));
        for second in 0..=255_u8 {
            assert_eq!(decode(&encode(&[first, second])), Some(vec![first, second]));
        }
    }
}
