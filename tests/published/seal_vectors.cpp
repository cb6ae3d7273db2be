// The sealing room against the printed vectors of its algorithms. What the room wraps is asked through the
// room; what it fixes otherwise (lengths, contexts) is asked of libsodium itself.
#include "engine/seal/base32.hpp"
#include "engine/seal/hash.hpp"
#include "engine/seal/lock.hpp"
#include "engine/seal/pairs.hpp"

#include <catch2/catch.hpp>
#include <sodium.h>

#include <algorithm>

using namespace matula;
using seal::view_of;

namespace {

seal::Bytes bytes(const std::string& hex) {
  return seal::from_hex(hex, hex.size() / 2);
}

template <class Array> Array array_of(const std::string& hex) {
  Array array{};
  const auto from = bytes(hex);
  REQUIRE(from.size() == array.size());
  std::copy(from.begin(), from.end(), array.begin());
  return array;
}

} // namespace

TEST_CASE("BLAKE2b of abc is as printed") {
  seal::ready();
  std::array<unsigned char, 64> long_hash{};
  crypto_generichash(long_hash.data(), long_hash.size(), view_of("abc").data(), 3, nullptr, 0);
  // RFC 7693, appendix A.
  CHECK(seal::hex(long_hash) == "ba80a53f981c4d0d6a2797b69f12f6e94c212f14685ac4b74b12bb6fdbffa2d1"
                                "7d87c5392aab792dc252d5de4533cc9518d38aa8dbf1925ab92386edd4009923");
  // The 32-byte length has no printed vector in the RFC; this is Python's hashlib (another implementation, by
  // the authors of BLAKE2) for the same letters.
  CHECK(seal::hex(seal::hash({view_of("a"), view_of("bc")})) ==
        "bddd813c634239723171ef3fee98579b94964e3bb1cb3e427262c8c068d52319");
}

TEST_CASE("Ed25519 signs as printed") {
  // RFC 8032, section 7.1, tests 1 to 3: secret key, public key, message, signature.
  struct Printed {
    const char* secret;
    const char* open;
    const char* message;
    const char* signature;
  };
  const Printed printed[] = {{"9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60",
                              "d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a", "",
                              "e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e065224901555fb8821590a33b"
                              "acc61e39701cf9b46bd25bf5f05"
                              "95bbe24655141438e7a100b"},
                             {"4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb",
                              "3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c", "72",
                              "92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da085ac1e43e1599"
                              "6e458f3613d0f11d8c387b2eaeb"
                              "4302aeeb00d291612bb0c00"},
                             {"c5aa8df43f9f837bedb7442f31dcb7b166d38535076f094b85ce3a2e0b4458f7",
                              "fc51cd8e6218a1a38da47ed00230f0580816ed13ba3303ac5deb911548908025", "af82",
                              "6291d657deec24024827e69c3abe01a30ce548a284743a445e3680d7db5ac3ac18ff9b538d16f2"
                              "90ae67f760984dc6594a7c15e97"
                              "16ed28dc027beceea1ec40a"}};
  for (const auto& one : printed) {
    const auto seed = bytes(one.secret);
    const seal::SigningPair pair(seed);
    CHECK(seal::hex(pair.open_half()) == one.open);
    // The room always puts a context in front, so that the bare message is given to libsodium.
    std::array<unsigned char, crypto_sign_SECRETKEYBYTES> secret{};
    seal::Key open{};
    crypto_sign_seed_keypair(open.data(), secret.data(), seed.data());
    const auto message = bytes(one.message);
    seal::Signature signature{};
    crypto_sign_detached(signature.data(), nullptr, message.data(), message.size(), secret.data());
    CHECK(seal::hex(signature) == one.signature);
  }
}

TEST_CASE("a signature under one context is none under another") {
  const seal::SigningPair pair(bytes("9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60"));
  const auto signature = pair.sign(seal::Signed::Pack, view_of("words"));
  CHECK(seal::verify(seal::Signed::Pack, view_of("words"), signature, pair.open_half()));
  CHECK_FALSE(seal::verify(seal::Signed::Receipt, view_of("words"), signature, pair.open_half()));
  CHECK_FALSE(seal::verify(seal::Signed::Pack, view_of("Words"), signature, pair.open_half()));
}

TEST_CASE("X25519 multiplies as printed") {
  seal::ready();
  // RFC 7748, section 5.2, first vector.
  const auto scalar = bytes("a546e36bf0527c9d3b16154b82465edd62144c0ac1fc5a18506a2244ba449ac4");
  const auto point = bytes("e6db6867583030db3594c1a424b15f7c726624ec26b3353b10a903a6d0ab1c4c");
  seal::Key product{};
  REQUIRE(crypto_scalarmult(product.data(), scalar.data(), point.data()) == 0);
  CHECK(seal::hex(product) == "c3da55379de9c6908e94ea4df28d084f32eccf03491c71f754b4075577a28552");
}

TEST_CASE("XChaCha20-Poly1305 opens the printed text") {
  // draft-irtf-cfrg-xchacha-03, appendix A.3.1; the room keeps the nonce in front of the sealed text.
  const auto key = bytes("808182838485868788898a8b8c8d8e8f909192939495969798999a9b9c9d9e9f");
  const auto with = bytes("50515253c0c1c2c3c4c5c6c7");
  const auto closed =
      bytes("404142434445464748494a4b4c4d4e4f5051525354555657"
            "bd6d179d3e83d43b9576579493c0e939572a1700252bfaccbed2902c21396cbb731c7f1b0b4aa6440bf3a82f"
            "4eda7e39ae64c6708c54c216cb96b72e1213b4522f8c9ba40db5d945b11b69b982c1bb9e3f3fac2bc369488f"
            "76b2383565d3fff921f9664c97637da9768812f615c68b13b52ec0875924c1c7987947deafd8780acf49");
  const auto plain = seal::open(closed, with, seal::Secret(seal::View(key)));
  REQUIRE(plain);
  CHECK(seal::text_of(plain->view()) ==
        "Ladies and Gentlemen of the class of '99: If I could offer you only one "
        "tip for the future, sunscreen would be it.");
  const auto again = seal::close(plain->view(), with, seal::Secret(seal::View(key)));
  CHECK(again.size() == closed.size());
  CHECK(seal::open(again, with, seal::Secret(seal::View(key))));
  CHECK_FALSE(seal::open(again, view_of("other words"), seal::Secret(seal::View(key))));
}

TEST_CASE("Argon2id stretches a passphrase as the reference program does") {
  // The vector of RFC 9106, section 5.3, has four lanes, a secret and associated data; libsodium takes one
  // lane and neither, so that it cannot be asked here. These values are the reference program's of the
  // algorithm's authors (Debian package argon2 0~20171227): `argon2 somesaltsomesalt -id -t T -k K -p 1 -l
  // 32` of "password".
  const seal::Secret password(view_of("password"));
  seal::Salt salt{};
  const std::string words = "somesaltsomesalt";
  std::copy(words.begin(), words.end(), salt.begin());
  const auto three = seal::stretch(password, salt, {3, 65536});
  const auto one = seal::stretch(password, salt, {1, 8192});
  REQUIRE(three);
  REQUIRE(one);
  CHECK(seal::hex(three->view()) == "6164c739a04e17de34a80bee65c6a58f4b8a240cbf5652f4a79e35ae02b7c616");
  CHECK(seal::hex(one->view()) == "05b6ca8f8038b683887ad4916533858b49cb52040126c134f4c6e9d8711b8c09");
}

TEST_CASE("base 32 is written as printed and read back") {
  // RFC 4648, section 10.
  const std::pair<const char*, const char*> printed[] = {{"", ""},
                                                         {"f", "MY======"},
                                                         {"fo", "MZXQ===="},
                                                         {"foo", "MZXW6==="},
                                                         {"foob", "MZXW6YQ="},
                                                         {"fooba", "MZXW6YTB"},
                                                         {"foobar", "MZXW6YTBOI======"}};
  for (const auto& [plain, letters] : printed) {
    CHECK(seal::base32(view_of(plain), true) == letters);
    const std::string bare = seal::base32(view_of(plain));
    const auto back = seal::from_base32(bare);
    REQUIRE(back);
    CHECK(seal::text_of(*back) == plain);
  }
  CHECK_FALSE(seal::from_base32("MZ1"));
  CHECK_FALSE(seal::from_base32("MR")); // Bits left over that are not zero: no other way to write "f".
}
