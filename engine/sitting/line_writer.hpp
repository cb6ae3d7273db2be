#pragma once

#include "engine/scenario/problem.hpp"

#include <tl/expected.hpp>

#include <cstdint>
#include <filesystem>
#include <string>

namespace matula::sitting {

/// Appends lines to a file, each on the disk before `append` returns. Only added to, never rewritten; only
/// the cut-off piece of a last line is taken away when a file is opened again.
class LineWriter {
public:
  /// A new file; one that is already there is refused.
  [[nodiscard]] static tl::expected<LineWriter, scenario::Problems> create(const std::filesystem::path& file,
                                                                           const std::string& first_line);
  /// Goes on after the last whole line, which ends at `good_bytes`.
  [[nodiscard]] static tl::expected<LineWriter, scenario::Problems> reopen(const std::filesystem::path& file,
                                                                           std::uint64_t good_bytes);
  ~LineWriter();
  LineWriter(LineWriter&& other) noexcept;
  LineWriter& operator=(LineWriter&& other) noexcept;

  /// False when the disk refused; `why` says what the system answered.
  [[nodiscard]] bool append(const std::string& line);
  [[nodiscard]] const std::string& why() const { return why_; }

private:
  LineWriter(int descriptor, std::string name) : descriptor_(descriptor), name_(std::move(name)) {}

  int descriptor_ = -1;
  std::string name_;
  std::string why_;
};

} // namespace matula::sitting
