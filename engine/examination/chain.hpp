#pragma once

#include "engine/seal/device.hpp"
#include "engine/seal/hash.hpp"
#include "engine/seal/pairs.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace matula::examination {

/// What a sitting's chain begins with.
struct ChainStart {
  seal::Hash pack{};
  std::string nonce;
  std::string pseudonym;
  std::string label; ///< Of the case.
  seal::Key device{};
  std::string program; ///< Version the sitting began with.
  std::uint64_t seed = 0;

  bool operator==(const ChainStart&) const = default;
};

/// h_0: over the start and the first line of the log.
[[nodiscard]] seal::Hash chain_start(const ChainStart& start, std::string_view first_line);
/// h_i: over h_{i-1} and the bytes of the log's next line, without its end.
[[nodiscard]] seal::Hash chain_next(const seal::Hash& before, std::string_view line);

/// The chain's state signed on the learner's machine.
struct Checkpoint {
  std::uint64_t records = 0; ///< Lines of the log behind its first.
  seal::Hash hash{};         ///< After that many.
  std::int64_t at_s = 0;     ///< UTC, seconds since 1970, by the learner's machine.
  std::string why;           ///< "begun", "counted", "resumed" or "handed in".
  seal::Signature signature{};
};

[[nodiscard]] seal::Signature sign(const Checkpoint& checkpoint, const seal::Hash& start,
                                   const seal::SigningPair& device);
[[nodiscard]] bool verify(const Checkpoint& checkpoint, const seal::Hash& start, const seal::Key& device);

/// A chain's file beside the log: the start on its first line, then a checkpoint a line.
struct Chain {
  ChainStart start;
  std::vector<Checkpoint> checkpoints;
  std::uint64_t good_bytes = 0; ///< Up to and with the end of the last whole line.
};

[[nodiscard]] std::string to_line(const ChainStart& start);
[[nodiscard]] std::string to_line(const Checkpoint& checkpoint);
/// Only the last line may be cut off, and only when its end is missing.
[[nodiscard]] seal::Maybe<Chain> parse_chain(std::string_view text, const std::string& name);

/// Forty bits of the last hash as eight letters in two groups: what the learner copies into the register.
[[nodiscard]] std::string closing_code(const seal::Hash& last);

/// The whole lines of a text, without their ends.
[[nodiscard]] std::vector<std::string_view> whole_lines(std::string_view text);

} // namespace matula::examination
