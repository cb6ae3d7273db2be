#pragma once

#include "engine/seal/bytes.hpp"

#include <optional>

namespace matula::seal {

/// Makes libsodium ready; throws std::runtime_error when it cannot be. Every function of this room calls it.
void ready();

/// Bytes nobody else should read: in libsodium's guarded memory (kept out of the swap file where the system
/// allows it), and wiped when they are given up.
class Secret {
public:
  explicit Secret(std::size_t size); ///< Throws std::bad_alloc.
  explicit Secret(View bytes);
  ~Secret();
  Secret(Secret&& other) noexcept;
  Secret& operator=(Secret&& other) noexcept;
  Secret(const Secret&) = delete;
  Secret& operator=(const Secret&) = delete;

  [[nodiscard]] unsigned char* data() { return data_; }
  [[nodiscard]] View view() const { return {data_, size_}; }
  [[nodiscard]] std::size_t size() const { return size_; }

  [[nodiscard]] static Secret random(std::size_t size);
  [[nodiscard]] static Secret zeros(std::size_t size); ///< To be typed into.

private:
  unsigned char* data_ = nullptr;
  std::size_t size_ = 0;
};

/// Overwrites words that held a secret.
void wipe(std::string& words);
void wipe(Bytes& bytes);

/// From the system's own source of chance.
[[nodiscard]] Bytes random_bytes(std::size_t size);

} // namespace matula::seal
