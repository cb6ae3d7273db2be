#include "engine/command/class_run.hpp"
#include "engine/command/exit_codes.hpp"
#include "engine/export/fhir.hpp"
#include "engine/export/html.hpp"
#include "engine/export/xapi.hpp"
#include "engine/records/trouble.hpp"

#include <filesystem>
#include <fmt/format.h>
#include <fmt/ostream.h>
#include <fstream>
#include <ostream>

namespace matula::command {
namespace {

namespace fs = std::filesystem;
using exports::For;

void write(const fs::path& file, const std::string& text) {
  std::ofstream stream(file, std::ios::binary);
  stream << text;
  stream.close();
  if (!stream) {
    throw records::Trouble(file.string() + " could not be written.");
  }
}

judging::Basis basis() {
  auto read = judging::load_basis(assets::folder());
  if (!read) {
    throw records::Trouble(scenario::to_text(read.error()));
  }
  return std::move(*read);
}

int write_bundles(records::Store& store, const std::vector<records::SittingRow>& rows,
                  const std::string& folder) {
  const auto codes = exports::load_codes(assets::folder());
  if (!codes) {
    throw records::Trouble(scenario::to_text(codes.error()));
  }
  std::error_code ignored;
  fs::create_directories(folder, ignored);
  for (const auto& row : rows) {
    write(fs::path(folder) / fmt::format("sitting-{}.json", row.number),
          exports::report_bundle(row, store.marks(row), procedure::shipped_list(), *codes));
  }
  return static_cast<int>(rows.size());
}

std::string page(records::Store& store, const ClassExport& asked) {
  const auto view = judging::judge(store, scope_of(asked), basis(), judging::Items::All);
  exports::PageWishes wishes{asked.title.empty() ? "Class report" : asked.title,
                             day_of(now_s()),
                             {},
                             records::to_review(store, scope_of(asked))};
  if (asked.names) {
    wishes.names = store.names();
  }
  return exports::class_page(view, wishes);
}

} // namespace

int run_class_export(const ClassExport& asked, std::ostream& out, std::ostream& /*err*/) {
  records::Store store(asked.store);
  const auto rows = store.sittings(scope_of(asked));
  const For whom = asked.for_students ? For::Student : For::Teacher;
  if (asked.for_students && (asked.what == "items" || asked.what == "confusion" || asked.what == "report")) {
    throw records::Trouble("There is no \"" + asked.what +
                           "\" without marks: students get sittings, marks, xapi or fhir.");
  }
  if (asked.what == "fhir") {
    fmt::print(out, "{} bundles in {}\n", write_bundles(store, rows, asked.output), asked.output);
    return exit_good;
  }
  std::string text;
  if (asked.what == "sittings") {
    text = exports::sittings_csv(rows, whom);
  } else if (asked.what == "marks") {
    text = exports::marks_csv(store, rows, whom);
  } else if (asked.what == "items") {
    text = exports::items_csv(judging::judge(store, scope_of(asked), basis(), judging::Items::All));
  } else if (asked.what == "confusion") {
    text = exports::confusion_csv(judging::judge(store, scope_of(asked), basis(), judging::Items::All));
  } else if (asked.what == "xapi") {
    text = exports::statements(store, rows, procedure::shipped_list(),
                               asked.home.empty() ? "https://matula.invalid/class" : asked.home, whom);
  } else {
    text = page(store, asked);
  }
  write(asked.output, text);
  fmt::print(out, "{}\n", asked.output);
  return exit_good;
}

} // namespace matula::command
