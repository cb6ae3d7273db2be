#include "engine/seal/lock.hpp"

#include <sodium.h>

#include <algorithm>

namespace matula::seal {

namespace {

constexpr std::size_t nonce_size = crypto_aead_xchacha20poly1305_ietf_NPUBBYTES;
constexpr std::size_t key_size = crypto_aead_xchacha20poly1305_ietf_KEYBYTES;
static_assert(close_adds == nonce_size + crypto_aead_xchacha20poly1305_ietf_ABYTES);
static_assert(sizeof(Salt) == crypto_pwhash_SALTBYTES);

constexpr std::uint64_t most_passes = 10;
constexpr std::uint64_t most_memory = 1073741824;

} // namespace

std::string refuse_effort(const Effort& effort) {
  if (effort.passes > most_passes || effort.memory_bytes > most_memory) {
    return "a passphrase that asks for " + std::to_string(effort.memory_bytes >> 20U) +
           " MiB of memory and " + std::to_string(effort.passes) + " passes";
  }
  if (effort.passes < crypto_pwhash_OPSLIMIT_MIN || effort.memory_bytes < crypto_pwhash_MEMLIMIT_MIN) {
    return "a passphrase that costs nothing to try";
  }
  return "";
}

tl::expected<Secret, std::string> stretch(const Secret& passphrase, const Salt& salt, const Effort& effort) {
  if (std::string why = refuse_effort(effort); !why.empty()) {
    return tl::make_unexpected(std::move(why));
  }
  Secret key(key_size);
  const auto* words = reinterpret_cast<const char*>(passphrase.view().data());
  const int made = crypto_pwhash(key.data(), key.size(), words, passphrase.size(), salt.data(), effort.passes,
                                 static_cast<std::size_t>(effort.memory_bytes), crypto_pwhash_ALG_ARGON2ID13);
  if (made != 0) {
    return tl::make_unexpected("too little free memory on this machine: a passphrase needs " +
                               std::to_string(effort.memory_bytes >> 20U) + " MiB for a moment");
  }
  return key;
}

Hash commitment(const Secret& key) {
  return keyed_hash(key.view(), {view_of("matula commitment-v1")});
}

Bytes close(View plain, View with, const Secret& key) {
  Bytes closed = random_bytes(nonce_size);
  closed.resize(plain.size() + close_adds);
  unsigned long long size = 0;
  crypto_aead_xchacha20poly1305_ietf_encrypt(closed.data() + nonce_size, &size, plain.data(), plain.size(),
                                             with.data(), with.size(), nullptr, closed.data(),
                                             key.view().data());
  return closed;
}

std::optional<Secret> open(View closed, View with, const Secret& key) {
  if (closed.size() < close_adds || key.size() != key_size) {
    return std::nullopt;
  }
  Secret plain(closed.size() - close_adds);
  unsigned long long size = 0;
  const View body = closed.subspan(nonce_size);
  const int opened =
      crypto_aead_xchacha20poly1305_ietf_decrypt(plain.data(), &size, nullptr, body.data(), body.size(),
                                                 with.data(), with.size(), closed.data(), key.view().data());
  return opened == 0 ? std::optional<Secret>(std::move(plain)) : std::nullopt;
}

} // namespace matula::seal
