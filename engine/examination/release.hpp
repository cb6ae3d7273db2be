#pragma once

#include "engine/examination/contents.hpp"
#include "engine/seal/device.hpp"
#include "engine/seal/keys.hpp"

namespace matula::examination {

/// What a learner gets back of one case: the marks, what was checked, and the whole scenario, so that the own
/// work can be replayed with feedback.
struct Release {
  PackId pack{};
  std::string pseudonym;
  std::string label;
  std::string case_key;
  std::string closing_code;
  std::string marks;    ///< As attribution::marks_text writes them.
  std::string checks;   ///< A line each.
  std::string scenario; ///< The whole text.
  std::int64_t at_s = 0;
  seal::Key signer{}; ///< The instructor who signed.
  seal::Signature signature{};
};

/// Signs with the instructor's keys and seals to the learner's device; the file's bytes.
[[nodiscard]] seal::Maybe<seal::Bytes> seal_release(Release release, const seal::InstructorKeys& keys,
                                                    const seal::Key& device, const std::string& name);

/// Opens with the learner's device key; refused when the signature does not fit.
[[nodiscard]] seal::Maybe<Release> open_release(seal::View file, const seal::Device& device,
                                                const std::string& name);

} // namespace matula::examination
