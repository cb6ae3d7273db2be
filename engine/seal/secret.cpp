#include "engine/seal/secret.hpp"

#include <sodium.h>

#include <algorithm>
#include <new>
#include <stdexcept>
#include <utility>

namespace matula::seal {

void ready() {
  static const int begun = sodium_init();
  if (begun < 0) {
    throw std::runtime_error("libsodium could not be started");
  }
}

Secret::Secret(std::size_t size) : size_(size) {
  ready();
  data_ = static_cast<unsigned char*>(sodium_malloc(std::max<std::size_t>(size, 1)));
  if (data_ == nullptr) {
    throw std::bad_alloc();
  }
}

Secret::Secret(View bytes) : Secret(bytes.size()) {
  std::copy(bytes.begin(), bytes.end(), data_);
}

Secret::~Secret() {
  if (data_ != nullptr) {
    sodium_free(data_); // Wipes it first.
  }
}

Secret::Secret(Secret&& other) noexcept
    : data_(std::exchange(other.data_, nullptr)), size_(std::exchange(other.size_, 0)) {}

Secret& Secret::operator=(Secret&& other) noexcept {
  std::swap(data_, other.data_);
  std::swap(size_, other.size_);
  return *this;
}

Secret Secret::random(std::size_t size) {
  Secret secret(size);
  randombytes_buf(secret.data(), size);
  return secret;
}

Secret Secret::zeros(std::size_t size) {
  Secret secret(size);
  std::fill(secret.data_, secret.data_ + size, static_cast<unsigned char>(0));
  return secret;
}

void wipe(std::string& words) {
  sodium_memzero(words.data(), words.size());
  words.clear();
}

void wipe(Bytes& bytes) {
  sodium_memzero(bytes.data(), bytes.size());
  bytes.clear();
}

Bytes random_bytes(std::size_t size) {
  ready();
  Bytes bytes(size);
  randombytes_buf(bytes.data(), size);
  return bytes;
}

} // namespace matula::seal
