#include "engine/classroom/export_files.hpp"

#include "engine/assets/world.hpp"
#include "engine/export/fhir.hpp"
#include "engine/export/html.hpp"
#include "engine/export/xapi.hpp"
#include "engine/records/trouble.hpp"

#include <ctime>
#include <fmt/format.h>
#include <fstream>

namespace matula::classroom {
namespace {

namespace fs = std::filesystem;

const ExportKind& kind_of(Export what) {
  for (const auto& kind : export_kinds()) {
    if (kind.what == what) {
      return kind;
    }
  }
  return export_kinds().front();
}

/// "2027-09-30-report.html", with a number behind it when that is there.
fs::path free_place(const fs::path& folder, const std::string& stem, const std::string& ending) {
  fs::path place = folder / (stem + ending);
  std::error_code ignored;
  for (int number = 2; fs::exists(place, ignored); ++number) {
    place = folder / fmt::format("{}-{}{}", stem, number, ending);
  }
  return place;
}

void write(const fs::path& file, const std::string& text) {
  std::ofstream out(file, std::ios::binary);
  out << text;
  out.close();
  if (!out) {
    throw records::Trouble(file.string() + " could not be written.");
  }
}

std::string page(records::Store& store, const records::Scope& scope, const judging::Basis& basis,
                 const ExportOrder& order) {
  exports::PageWishes wishes{order.title.empty() ? "Class report" : order.title,
                             day_in_words(order.now_s),
                             {},
                             records::to_review(store, scope)};
  if (order.by_name) {
    wishes.names = store.names();
  }
  return exports::class_page(judging::judge(store, scope, basis, judging::Items::All), wishes);
}

void write_bundles(records::Store& store, const records::Scope& scope, const fs::path& folder) {
  const auto codes = exports::load_codes(assets::folder());
  if (!codes) {
    throw records::Trouble(scenario::to_text(codes.error()));
  }
  fs::create_directories(folder);
  for (const auto& row : store.sittings(scope)) {
    write(folder / fmt::format("sitting-{}.json", row.number),
          exports::report_bundle(row, store.marks(row), procedure::shipped_list(), *codes));
  }
}

std::string text_of(records::Store& store, const records::Scope& scope, const judging::Basis& basis,
                    const ExportOrder& order) {
  switch (order.what) {
  case Export::Sittings:
    return exports::sittings_csv(store.sittings(scope), exports::For::Teacher);
  case Export::Marks:
    return exports::marks_csv(store, store.sittings(scope), exports::For::Teacher);
  case Export::Items:
    return exports::items_csv(judging::judge(store, scope, basis, judging::Items::All));
  case Export::Confusion:
    return exports::confusion_csv(judging::judge(store, scope, basis, judging::Items::All));
  case Export::Xapi:
    return exports::statements(store, store.sittings(scope), procedure::shipped_list(),
                               order.home.empty() ? "https://matula.invalid/class" : order.home,
                               exports::For::Teacher);
  case Export::Report:
  case Export::Fhir:
    break;
  }
  return page(store, scope, basis, order);
}

} // namespace

const std::vector<ExportKind>& export_kinds() {
  static const std::vector<ExportKind> kinds{
      {Export::Report, "report", "Report to print (HTML; opens in a browser, which also makes a PDF)",
       ".html"},
      {Export::Sittings, "sittings", "Sittings, one a row (CSV)", ".csv"},
      {Export::Marks, "marks", "Marks, one a row (CSV)", ".csv"},
      {Export::Items, "items", "Items with difficulty and discrimination (CSV)", ".csv"},
      {Export::Confusion, "confusion", "Tables of shown and written (CSV)", ".csv"},
      {Export::Xapi, "xapi", "Learning statements (xAPI, JSON)", ".json"},
      {Export::Fhir, "fhir", "Laboratory reports (FHIR R4, a folder of JSON)", ""}};
  return kinds;
}

fs::path write_export(records::Store& store, const records::Scope& scope, const judging::Basis& basis,
                      const ExportOrder& order) {
  const ExportKind& kind = kind_of(order.what);
  std::error_code wrong;
  fs::create_directories(order.folder, wrong);
  if (wrong) {
    throw records::Trouble(order.folder.string() + " cannot be made: " + wrong.message());
  }
  const fs::path place = free_place(order.folder, day_in_words(order.now_s) + "-" + kind.key, kind.ending);
  if (order.what == Export::Fhir) {
    write_bundles(store, scope, place);
  } else {
    write(place, text_of(store, scope, basis, order));
  }
  return place;
}

std::string day_in_words(std::int64_t time_s) {
  const std::time_t time = time_s;
  std::tm parts{};
  gmtime_r(&time, &parts);
  return fmt::format("{:04}-{:02}-{:02}", parts.tm_year + 1900, parts.tm_mon + 1, parts.tm_mday);
}

} // namespace matula::classroom
