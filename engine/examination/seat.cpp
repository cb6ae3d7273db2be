#include "engine/examination/seat.hpp"

#include "engine/seal/base32.hpp"
#include "engine/seal/passphrase.hpp"
#include "engine/strict/nearest.hpp"

namespace matula::examination {

seal::Maybe<std::vector<std::string>> labels_of(const Pack& pack, const BenchSection& bench,
                                                const std::string& pseudonym) {
  std::vector<std::string> labels;
  std::vector<std::string> pseudonyms;
  for (const auto& student : bench.students) {
    pseudonyms.push_back(student.pseudonym);
    if (student.pseudonym == pseudonym) {
      for (const auto& one : student.cases) {
        labels.push_back(one.label);
      }
    }
  }
  if (labels.empty()) {
    return seal::refuse(pack.name, "no cases for '" + pseudonym + "'",
                        "the pseudonym of the learner's card: " + strict::suggestion(pseudonym, pseudonyms));
  }
  return labels;
}

seal::Maybe<Seat> take_seat(const Pack& pack, const BenchSection& bench, const std::string& pseudonym,
                            const std::string& label, const std::string& nonce) {
  const auto labels = labels_of(pack, bench, pseudonym);
  if (!labels) {
    return tl::make_unexpected(labels.error());
  }
  const CaseText* found = find_case(bench.students, pseudonym, label);
  if (found == nullptr) {
    return seal::refuse(pack.name, "no case '" + label + "' for '" + pseudonym + "'",
                        strict::suggestion(label, *labels, labels->size()));
  }
  if (std::string why = seal::refuse_drawn(nonce, seal::nonce_letters, "a session code"); !why.empty()) {
    return seal::refuse("session code", why, "the session code as it was read out in the room");
  }
  return Seat{pack.head, pack.hash, seal::in_groups(seal::tidy(nonce)), pseudonym, label, found->text};
}

} // namespace matula::examination
