#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace matula::seal {

using Bytes = std::vector<unsigned char>;
/// Bytes that somebody else keeps.
using View = std::span<const unsigned char>;

[[nodiscard]] inline View view_of(std::string_view text) {
  return {reinterpret_cast<const unsigned char*>(text.data()), text.size()};
}
[[nodiscard]] inline std::string text_of(View bytes) {
  return {reinterpret_cast<const char*>(bytes.data()), bytes.size()};
}

/// Puts fields one behind the other: whole numbers little-endian, words behind their length (four bytes).
class ByteWriter {
public:
  ByteWriter& u16(std::uint16_t value) { return number(value, 2); }
  ByteWriter& u32(std::uint32_t value) { return number(value, 4); }
  ByteWriter& u64(std::uint64_t value) { return number(value, 8); }
  ByteWriter& raw(View bytes) {
    bytes_.insert(bytes_.end(), bytes.begin(), bytes.end());
    return *this;
  }
  ByteWriter& text(std::string_view words) {
    return u32(static_cast<std::uint32_t>(words.size())).raw(view_of(words));
  }
  [[nodiscard]] const Bytes& bytes() const { return bytes_; }
  [[nodiscard]] Bytes take() { return std::move(bytes_); }

private:
  ByteWriter& number(std::uint64_t value, int size) {
    for (int i = 0; i < size; ++i) {
      bytes_.push_back(static_cast<unsigned char>(value >> static_cast<unsigned>(8 * i)));
    }
    return *this;
  }
  Bytes bytes_;
};

/// Takes the same fields out again. A field that reaches beyond the end, or is longer than its limit, makes
/// the reader bad for good; nothing is set aside for a field before its length is known to be there.
class ByteReader {
public:
  explicit ByteReader(View bytes) : bytes_(bytes) {}

  [[nodiscard]] std::uint16_t u16() { return static_cast<std::uint16_t>(number(2)); }
  [[nodiscard]] std::uint32_t u32() { return static_cast<std::uint32_t>(number(4)); }
  [[nodiscard]] std::uint64_t u64() { return number(8); }
  /// A number of things that follow, each at least one byte long.
  [[nodiscard]] std::uint32_t count(std::uint32_t most) {
    const std::uint32_t many = u32();
    good_ = good_ && many <= most && many <= left();
    return good_ ? many : 0;
  }
  [[nodiscard]] View raw(std::size_t size) {
    good_ = good_ && size <= left();
    if (!good_) {
      return {};
    }
    const View taken = bytes_.subspan(at_, size);
    at_ += size;
    return taken;
  }
  template <std::size_t size> void fill(std::array<unsigned char, size>& array) {
    const View taken = raw(size);
    for (std::size_t i = 0; i < taken.size(); ++i) {
      array[i] = taken[i];
    }
  }
  [[nodiscard]] std::string text(std::size_t most) {
    const std::uint32_t size = u32();
    good_ = good_ && size <= most;
    return text_of(raw(good_ ? size : 0));
  }
  [[nodiscard]] std::size_t left() const { return bytes_.size() - at_; }
  [[nodiscard]] std::size_t at() const { return at_; }
  [[nodiscard]] bool good() const { return good_; }
  /// Good, and nothing is left over.
  [[nodiscard]] bool done() const { return good_ && left() == 0; }

private:
  std::uint64_t number(std::size_t size) {
    std::uint64_t value = 0;
    const View taken = raw(size);
    for (std::size_t i = 0; i < taken.size(); ++i) {
      value |= static_cast<std::uint64_t>(taken[i]) << static_cast<unsigned>(8 * i);
    }
    return value;
  }

  View bytes_;
  std::size_t at_ = 0;
  bool good_ = true;
};

} // namespace matula::seal
