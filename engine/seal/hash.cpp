#include "engine/seal/hash.hpp"

#include "engine/seal/secret.hpp"

#include <sodium.h>

namespace matula::seal {

Hash keyed_hash(View key, std::initializer_list<View> parts) {
  ready();
  crypto_generichash_state state;
  crypto_generichash_init(&state, key.empty() ? nullptr : key.data(), key.size(), sizeof(Hash));
  for (const View part : parts) {
    crypto_generichash_update(&state, part.data(), part.size());
  }
  Hash result{};
  crypto_generichash_final(&state, result.data(), result.size());
  return result;
}

Hash hash(std::initializer_list<View> parts) {
  return keyed_hash({}, parts);
}

bool same(View a, View b) {
  return a.size() == b.size() && sodium_memcmp(a.data(), b.data(), a.size()) == 0;
}

std::string hex(View bytes) {
  std::string words(bytes.size() * 2 + 1, '\0');
  sodium_bin2hex(words.data(), words.size(), bytes.data(), bytes.size());
  words.pop_back();
  return words;
}

Bytes from_hex(std::string_view words, std::size_t size) {
  Bytes bytes(size);
  std::size_t made = 0;
  const bool whole = words.size() == 2 * size && sodium_hex2bin(bytes.data(), bytes.size(), words.data(),
                                                                words.size(), nullptr, &made, nullptr) == 0;
  // The library takes capitals too; one value is written in one way only.
  return whole && made == size && hex(bytes) == words ? bytes : Bytes{};
}

} // namespace matula::seal
