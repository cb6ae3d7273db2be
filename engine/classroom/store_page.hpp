#pragma once

#include "engine/judging/figures.hpp"
#include "engine/records/review.hpp"

#include <map>
#include <string>
#include <vector>

namespace matula::classroom {

/// What a store holds, as the window shows it: plain figures, taken at one moment.
struct StorePage {
  std::string address;
  records::Scope scope; ///< What it was narrowed down to.
  judging::ClassView view;
  std::vector<records::SittingRow> sittings; ///< Within the scope, by number.
  std::vector<records::ToReview> to_review;  ///< Of those.
  std::map<std::string, std::string> names;  ///< By pseudonym; empty without the instructor's list.
  std::vector<std::string> cases, labels;    ///< Of the whole store, to choose from.
  int all_sittings = 0;                      ///< Of the whole store.

  /// "red-fox", or "Ada Example (red-fox)" where the list has the name.
  [[nodiscard]] std::string call(const std::string& pseudonym, bool by_name) const;
};

/// Reads and judges. Throws records::Trouble.
[[nodiscard]] StorePage read_page(records::Store& store, const std::string& address,
                                  const records::Scope& scope, const judging::Basis& basis);

} // namespace matula::classroom
