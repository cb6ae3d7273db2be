#pragma once

#include "engine/export/tables.hpp"
#include "engine/procedure/procedure.hpp"

#include <string>
#include <vector>

namespace matula::exports {

/// Statements of the Experience API, version 1.0.3 (Advanced Distributed Learning Initiative 2016), as a JSON
/// array: for each graded reading "answered", for each sitting "completed" and, for a teacher, "passed" or
/// "failed". Actors are pseudonyms under `home`, an address of the school's own. The time is that of the
/// import: logs hold no date. The right responses are never written. The same sittings give the same
/// statements.
[[nodiscard]] std::string statements(records::Store& store, const std::vector<records::SittingRow>& rows,
                                     const std::vector<procedure::Procedure>& tests, const std::string& home,
                                     For whom);

} // namespace matula::exports
