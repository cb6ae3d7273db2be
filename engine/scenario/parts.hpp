#pragma once

#include "engine/scenario/limits.hpp"
#include "engine/scenario/review.hpp"
#include "engine/scenario/scenario.hpp"
#include "engine/strict/table.hpp"
#include "sim/matter/catalogue.hpp"

namespace matula::scenario {

// One reader a section. Each reports what is wrong to the table's file and reads on.
[[nodiscard]] Patient read_patient(const strict::Table& root);
[[nodiscard]] specimen::Specimen read_specimen(const strict::Table& root, const Limits& limits,
                                               const matter::Catalogue& catalogue);
/// Nothing when the case has no [collection].
[[nodiscard]] std::optional<reception::Delivery> read_collection(const strict::Table& root,
                                                                 const Limits& limits, const Patient& patient,
                                                                 const specimen::Specimen& specimen);
/// Complains where form and label say what is not so: preservative, times, storage.
void check_collection(const strict::Table& table, const reception::Delivery& delivery,
                      const specimen::Specimen& specimen);
/// Cells, organisms, legs and preservatives of the specimen's way to the bench.
void read_keeping(const strict::Table& specimen, const Limits& limits, const matter::Catalogue& catalogue,
                  specimen::Specimen& made);
/// Room, urinometer and shelf.
void read_conditions(const strict::Table& root, const Limits& limits, const matter::Catalogue& catalogue,
                     Scenario& scenario);
/// The arithmetic the laboratory has written down.
void read_rules(const strict::Table& root, const Limits& limits, LaboratoryRules& rules);
[[nodiscard]] Asked read_asked(const strict::Table& root);
[[nodiscard]] Marking read_marking(const strict::Table& root, const Limits& limits);
[[nodiscard]] std::vector<Decision> read_decisions(const strict::Table& root, const Limits& limits);
/// The same without answers, reasons and weights, which then may not stand there.
[[nodiscard]] std::vector<Decision> read_questions(const strict::Table& root);

/// Nothing when the case has no [review].
[[nodiscard]] std::optional<Review> read_review(const strict::Table& root);

/// Complains about a test that is asked for while none of its reagents is out.
void check_reagents(const strict::Table& root, const Asked& asked, const std::vector<std::string>& out);

} // namespace matula::scenario
