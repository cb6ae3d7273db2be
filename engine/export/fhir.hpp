#pragma once

#include "engine/export/codes.hpp"
#include "engine/procedure/procedure.hpp"
#include "engine/records/store.hpp"

#include <string>
#include <vector>

namespace matula::exports {

/// A student's worksheet as a laboratory would report it: a FHIR R4 (HL7 2019) Bundle of one
/// DiagnosticReport, an Observation for each line that was written, and a simulated patient. Every resource
/// is marked as test data (security label HTEST) and says in words that it is a training result. It holds
/// what the student wrote, no marks, and the pseudonym only as the performer.
[[nodiscard]] std::string report_bundle(const records::SittingRow& row,
                                        const std::vector<records::MarkRow>& marks,
                                        const std::vector<procedure::Procedure>& tests, const Codes& codes);

} // namespace matula::exports
