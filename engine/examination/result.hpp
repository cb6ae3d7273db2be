#pragma once

#include "engine/examination/chain.hpp"
#include "engine/examination/contents.hpp"
#include "engine/seal/keys.hpp"

namespace matula::examination {

/// What a learner's machine hands in for one case. Nothing in it is believed before it is checked.
struct HandedIn {
  PackId pack{};
  std::string pseudonym;
  std::string label; ///< Of the case.
  seal::Key device{};
  std::string program;       ///< Version it was handed in with.
  std::string log;           ///< The sitting's log, every byte.
  std::string chain;         ///< The chain's file, every byte.
  seal::Signature receipt{}; ///< By the device, over all of the above.
};

inline constexpr std::size_t most_log_bytes = 33554432; ///< 32 MiB.

/// Signs and seals to the instructor; the file's bytes.
[[nodiscard]] seal::Maybe<seal::Bytes> seal_result(HandedIn result, const seal::SigningPair& device,
                                                   const seal::Key& instructor, const std::string& name);

/// Opens a result with the instructor's keys. Whether the receipt fits is left to `receipt_fits`, so that a
/// sitting that was changed can still be looked at.
[[nodiscard]] seal::Maybe<HandedIn> open_result(seal::View file, const seal::InstructorKeys& keys,
                                                const std::string& name);
/// The same for what was sealed in a file whose header names the pack `outside`.
[[nodiscard]] seal::Maybe<HandedIn> read_handed_in(const PackId& outside, seal::View plain,
                                                   const std::string& name);
[[nodiscard]] bool receipt_fits(const HandedIn& result);

} // namespace matula::examination
