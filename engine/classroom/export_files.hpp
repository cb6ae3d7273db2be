#pragma once

#include "engine/classroom/store_page.hpp"

#include <filesystem>
#include <string>
#include <vector>

namespace matula::classroom {

/// A kind of file that can leave the class.
enum class Export { Report, Sittings, Marks, Items, Confusion, Xapi, Fhir };

struct ExportKind {
  Export what;
  const char* key;   ///< "report"
  const char* words; ///< What it is, for the instructor.
  const char* ending;
};
[[nodiscard]] const std::vector<ExportKind>& export_kinds();

struct ExportOrder {
  Export what = Export::Report;
  std::filesystem::path folder; ///< Made when it is not there.
  std::string title;            ///< Of the report.
  bool by_name = false;         ///< Report: names beside the pseudonyms.
  std::string home;             ///< xAPI: web address the pseudonyms belong to.
  std::int64_t now_s = 0;
};

/// Writes into a new file (for FHIR a new folder) whose name begins with the day, and returns where it lies.
/// Nothing that is there is written over. Throws records::Trouble.
[[nodiscard]] std::filesystem::path write_export(records::Store& store, const records::Scope& scope,
                                                 const judging::Basis& basis, const ExportOrder& order);

/// UTC, "2027-09-30".
[[nodiscard]] std::string day_in_words(std::int64_t time_s);

} // namespace matula::classroom
