#include "engine/seal/pairs.hpp"

#include <sodium.h>

#include <algorithm>

namespace matula::seal {

namespace {

static_assert(close_to_adds == crypto_box_SEALBYTES);
static_assert(sizeof(Key) == crypto_box_PUBLICKEYBYTES && sizeof(Key) == crypto_sign_PUBLICKEYBYTES);
static_assert(sizeof(Signature) == crypto_sign_BYTES);

std::string_view context(Signed as) {
  switch (as) {
  case Signed::Pack:
    return "matula pack-v1";
  case Signed::Checkpoint:
    return "matula log-v1";
  case Signed::Receipt:
    return "matula receipt-v1";
  case Signed::Release:
    break;
  }
  return "matula release-v1";
}

Bytes framed(Signed as, View message) {
  ByteWriter whole;
  return whole.text(context(as)).raw(message).take();
}

} // namespace

SigningPair::SigningPair(View seed) : secret_(std::size_t{crypto_sign_SECRETKEYBYTES}) {
  const Secret whole(seed.first(crypto_sign_SEEDBYTES));
  crypto_sign_seed_keypair(open_half_.data(), secret_.data(), whole.view().data());
}

Signature SigningPair::sign(Signed as, View message) const {
  const Bytes whole = framed(as, message);
  Signature signature{};
  crypto_sign_detached(signature.data(), nullptr, whole.data(), whole.size(), secret_.view().data());
  return signature;
}

bool verify(Signed as, View message, const Signature& signature, const Key& open_half) {
  ready();
  const Bytes whole = framed(as, message);
  return crypto_sign_verify_detached(signature.data(), whole.data(), whole.size(), open_half.data()) == 0;
}

SealingPair::SealingPair(View seed) : secret_(std::size_t{crypto_box_SECRETKEYBYTES}) {
  const Secret whole(seed.first(crypto_box_SEEDBYTES));
  crypto_box_seed_keypair(open_half_.data(), secret_.data(), whole.view().data());
}

std::optional<Bytes> SealingPair::open(View closed) const {
  if (closed.size() < close_to_adds) {
    return std::nullopt;
  }
  Bytes plain(closed.size() - close_to_adds);
  const int opened = crypto_box_seal_open(plain.data(), closed.data(), closed.size(), open_half_.data(),
                                          secret_.view().data());
  return opened == 0 ? std::optional(std::move(plain)) : std::nullopt;
}

std::optional<Bytes> close_to(const Key& open_half, View plain) {
  ready();
  Bytes closed(plain.size() + close_to_adds);
  const int made = crypto_box_seal(closed.data(), plain.data(), plain.size(), open_half.data());
  return made == 0 ? std::optional(std::move(closed)) : std::nullopt;
}

SealingPair sealing_pair_of(View signing_seed) {
  Key signing_half{};
  const Secret seed(signing_seed.first(crypto_sign_SEEDBYTES));
  Secret signing(std::size_t{crypto_sign_SECRETKEYBYTES});
  crypto_sign_seed_keypair(signing_half.data(), signing.data(), seed.view().data());
  SealingPair pair;
  crypto_sign_ed25519_sk_to_curve25519(pair.secret_.data(), signing.view().data());
  crypto_scalarmult_base(pair.open_half_.data(), pair.secret_.view().data());
  return pair;
}

std::optional<Key> sealing_half_of(const Key& signing_half) {
  ready();
  Key half{};
  return crypto_sign_ed25519_pk_to_curve25519(half.data(), signing_half.data()) == 0 ? std::optional(half)
                                                                                     : std::nullopt;
}

} // namespace matula::seal
