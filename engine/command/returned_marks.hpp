#pragma once

#include "engine/attribution/explanation.hpp"
#include "engine/command/arguments.hpp"
#include "engine/command/replayed.hpp"
#include "engine/examination/open_returned.hpp"

#include <functional>
#include <iosfwd>

namespace matula::command {

/// A returned sitting with marks from replaying its log; nothing the learner's machine says of marks is used.
struct MarkedReturn {
  examination::Returned returned;
  std::optional<scoring::Report> report; ///< Nothing when the log cannot be replayed.
  std::vector<attribution::Explanation> why;
  std::string not_marked_because;
};

/// A folder of results, opened, checked and marked.
struct MarkedFolder {
  examination::OpenedReturns opened; ///< Its sittings stand in `marked`.
  std::vector<MarkedReturn> marked;

  /// Since the pack was sealed.
  [[nodiscard]] bool rules_changed() const { return opened.rules_changed(assets::folder()); }
};

/// Does all of it, with progress on `err` when there is a terminal. Without `marks` it is only opened and
/// checked.
[[nodiscard]] seal::Maybe<MarkedFolder> mark_folder(const Results& asked, bool marks, std::ostream& err);

/// Marks one sitting with the whole scenario, by the general rules as they are now.
[[nodiscard]] MarkedReturn mark(const Ground& ground, examination::Returned returned);

/// "to be reviewed: chain: ..." a line each, and what was not checked.
[[nodiscard]] std::string check_words(const examination::Returned& returned);

} // namespace matula::command
