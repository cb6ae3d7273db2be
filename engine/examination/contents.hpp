#pragma once

#include "engine/seal/hash.hpp"
#include "engine/seal/refusal.hpp"

#include <array>
#include <string>
#include <vector>

namespace matula::examination {

using PackId = std::array<unsigned char, 16>;

/// One case of one learner. In the bench section only `label` and the bench half stand.
struct CaseText {
  std::string label; ///< "unknown-1": all a learner sees of its name.
  std::string text;  ///< Bench half, or the whole scenario in the key section.
  std::string
      key; ///< Of the exercise: a scenario's, a pattern's or a folder of forms'; shared by all its variants.
  std::string drawn; ///< In words: from which file or pattern, with which seed.
};

struct StudentCases {
  std::string pseudonym;
  std::vector<CaseText> cases;
};

/// What the class passphrase opens.
struct BenchSection {
  PackId pack{};
  std::vector<StudentCases> students;
};

/// What only the instructor opens.
struct KeySection {
  PackId pack{};
  std::string nonce;   ///< Of the session, as read out in the room.
  seal::Hash secret{}; ///< What the learners' seeds are drawn from.
  std::string rules;   ///< assets/scoring/rules.toml as it was when the pack was sealed.
  std::vector<StudentCases> students;
};

inline constexpr std::uint32_t most_students = 2000;
inline constexpr std::uint32_t most_cases = 50;
inline constexpr std::size_t most_text = 262144; ///< Bytes of one scenario, or of the rules.

/// Why this cannot be packed (too many, too long, a pseudonym that is no name); "" when it can.
[[nodiscard]] std::string refuse_contents(const std::vector<StudentCases>& students);

[[nodiscard]] seal::Bytes bytes_of(const BenchSection& section);
[[nodiscard]] seal::Bytes bytes_of(const KeySection& section);
[[nodiscard]] seal::Maybe<BenchSection> read_bench(seal::View bytes, const std::string& name);
[[nodiscard]] seal::Maybe<KeySection> read_key(seal::View bytes, const std::string& name);

/// The case of this label of this learner; null when there is none.
[[nodiscard]] const CaseText* find_case(const std::vector<StudentCases>& students,
                                        const std::string& pseudonym, const std::string& label);

} // namespace matula::examination
