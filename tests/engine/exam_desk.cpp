// A desk opened from a pack: no marks and no help, kill-safe, one result and one closing code.
#include "engine/desk/desk.hpp"
#include "engine/examination/returned.hpp"
#include "engine/examination/seat.hpp"
#include "engine/scoring/standards.hpp"
#include "engine/seal/frame.hpp"
#include "engine/sitting/log.hpp"
#include "engine/sitting/steps.hpp"
#include "engine/strict/disk.hpp"
#include "engine/strict/file.hpp"
#include "exam_support.hpp"
#include "full_disk.hpp"

#include <algorithm>
#include <csignal>
#include <sys/wait.h>

using namespace matula;
using namespace matula::tests;
namespace fs = std::filesystem;

namespace {

const fs::path root = MATULA_SOURCE_DIR;

const desk::Ground& ground() {
  static const auto loaded = desk::Ground::load();
  REQUIRE(loaded);
  return *loaded;
}

std::string first_case() {
  std::string text;
  REQUIRE(strict::read_text(root / "scenarios" / "first_case.toml", text));
  return text;
}

struct Room {
  examination::PackContents made = contents(first_case());
  examination::Pack pack = opened(sealed(made));
  examination::BenchSection bench = *examination::open_bench(pack, class_passphrase());
  examination::KeySection key = *examination::open_key(pack, instructor());
  examination::Seat seat = *examination::take_seat(pack, bench, "heron-07", "unknown-1", made.nonce);
};

const Room& room() {
  static const Room one;
  return one;
}

std::vector<sitting::Event> steps() {
  auto read = sitting::read_steps(root / "scenarios" / "first_case.steps.jsonl");
  REQUIRE(read);
  return *read;
}

void take(desk::Desk& desk, const sitting::Event& step) {
  if (const auto* action = std::get_if<bench::Action>(&step.what)) {
    desk.act(*action);
  } else if (const auto* record = std::get_if<sitting::Record>(&step.what)) {
    REQUIRE(desk.record(record->item, record->value) == "");
  } else {
    REQUIRE(desk.finish() == "");
  }
}

desk::Desk sit(const fs::path& folder) {
  auto desk = desk::Desk::sit(ground(), room().seat, learner(), folder);
  if (!desk) {
    FAIL(said(desk));
  }
  return std::move(*desk);
}

examination::Returned returned(const fs::path& file) {
  const auto bytes = seal::read_bytes(file, "a result");
  REQUIRE(bytes);
  const auto result = examination::open_result(*bytes, instructor(), file.string());
  if (!result) {
    FAIL(said(result));
  }
  return examination::check(*result, file.string(), room().pack, room().key, {});
}

std::string in_words(const examination::Returned& one) {
  std::string words;
  for (const auto& check : one.checks) {
    words += check.what + ": " + check.words + "\n";
  }
  return words;
}

std::size_t log_lines(const fs::path& file) {
  std::string text;
  return strict::read_text(file, text) ? static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n'))
                                       : 0;
}

} // namespace

TEST_CASE(
    "a case worked in an examination shows nothing, hands in one result, and is marked by replay alone") {
  const auto folder = fresh_folder("exam_desk");
  auto desk = sit(folder);
  CHECK(desk.examination());
  CHECK_FALSE(desk.guide());
  CHECK(desk.brief().title == "Spring practical: unknown-1");
  CHECK(desk.brief().level == "exam");
  CHECK(desk.brief().questions.size() == 2);
  for (const auto& step : steps()) {
    take(desk, step);
  }
  CHECK(desk.finished());
  CHECK_FALSE(desk.report());
  CHECK(desk.why().empty());
  CHECK_FALSE(fs::exists(desk.marks_file()));
  CHECK_FALSE(fs::exists(folder / "learner"));
  REQUIRE(desk.closed());

  const auto one = returned(desk.closed()->result_file);
  INFO(in_words(one));
  CHECK_FALSE(one.to_be_reviewed());
  CHECK(one.closing_code == desk.closed()->closing_code);

  // Marked with the whole scenario the answers give what the same steps give in the open.
  const auto whole = scenario::parse(one.scenario_text, "swollen_ankles.toml", ground().world().catalogue);
  const auto log = sitting::parse_log(one.log, "log");
  REQUIRE(whole);
  REQUIRE(log);
  CHECK(sitting::check_scenario(log->header, *whole, "log").empty());
  const auto report = scoring::score(ground().world(), ground().standards(), *whole, log->events);
  const auto open = scoring::score(ground().world(), ground().standards(), *whole, steps());
  for (const auto ledger : scoring::all_ledgers) {
    CHECK(report.earned(ledger) == open.earned(ledger));
    CHECK(report.possible(ledger) == open.possible(ledger));
  }
  CHECK(report.earned(scoring::Ledger::Reading) > 0);
  // Opened again it is closed with the same code, and cannot be worked on.
  auto again = sit(folder);
  CHECK(again.closed()->closing_code == one.closing_code);
  CHECK_FALSE(again.act(bench::Wait{10}).done);
  fs::remove_all(folder);
}

TEST_CASE("killed again and again, an examination goes on and its chain still fits") {
  const auto folder = fresh_folder("exam_killed");
  const auto all = steps();
  const auto log_file = sit(folder).log_file();
  std::size_t kills = 0;
  for (std::size_t from = 0; from + 1 < all.size();) {
    const std::size_t until = std::min(all.size() - 1, from + 7);
    const pid_t child = ::fork();
    REQUIRE(child >= 0);
    if (child == 0) {
      auto desk = desk::Desk::sit(ground(), room().seat, learner(), folder);
      for (std::size_t i = from; desk && i < until; ++i) {
        const auto& what = all[i].what;
        if (const auto* action = std::get_if<bench::Action>(&what)) {
          desk->act(*action);
        } else if (const auto* record = std::get_if<sitting::Record>(&what)) {
          (void)desk->record(record->item, record->value);
        }
      }
      ::raise(SIGKILL);
    }
    int status = 0;
    REQUIRE(::waitpid(child, &status, 0) == child);
    REQUIRE(WIFSIGNALED(status));
    ++kills;
    from = until;
    if (kills % 3 == 0) { // And sometimes in the middle of a line.
      std::FILE* out = std::fopen(log_file.c_str(), "ab");
      std::fputs("{\"t\":1", out);
      std::fclose(out);
    }
  }
  CHECK(kills >= 3);
  CHECK(log_lines(log_file) >= all.size());
  auto desk = sit(folder);
  REQUIRE(desk.finish() == "");
  const auto one = returned(desk.closed()->result_file);
  INFO(in_words(one));
  CHECK_FALSE(one.to_be_reviewed());
  CHECK(in_words(one).find("gone on with") != std::string::npos);
  fs::remove_all(folder);
}

TEST_CASE("a log edited between two openings is handed in and told") {
  const auto folder = fresh_folder("exam_edited");
  const auto all = steps();
  {
    auto desk = sit(folder);
    for (std::size_t i = 0; i + 1 < all.size(); ++i) {
      take(desk, all[i]);
    }
  }
  const auto log_file = sit(folder).log_file();
  std::string log;
  REQUIRE(strict::read_text(log_file, log));
  const auto at = log.find("\"do\":\"record\"");
  REQUIRE(at != std::string::npos);
  const auto line = log.rfind('\n', at) + 1;
  log.erase(line, log.find('\n', at) + 1 - line);
  REQUIRE(strict::write_whole(log_file, log).empty());
  auto desk = sit(folder);
  REQUIRE(desk.finish() == "");
  const auto one = returned(desk.closed()->result_file);
  CHECK(one.to_be_reviewed());
  CHECK_THAT(in_words(one), Catch::Matchers::Contains("the log is not as it was signed"));
  fs::remove_all(folder);
}

TEST_CASE("another device's key, another session and a read-only folder are refused in words") {
  const auto folder = fresh_folder("exam_refused");
  CHECK_THAT(said(desk::Desk::sit(ground(), room().seat, learner("otter-12"), folder)),
             Catch::Matchers::Contains("the device key of 'otter-12'"));
  (void)sit(folder);
  auto other = room().seat;
  other.nonce = seal::draw_letters(seal::nonce_letters);
  CHECK_THAT(said(desk::Desk::sit(ground(), other, learner(), folder)),
             Catch::Matchers::Contains("another sitting, session or device"));
  CHECK_THAT(said(desk::Desk::sit(ground(), room().seat, learner(), "/proc/nowhere")),
             Catch::Matchers::Contains("cannot be written"));
  fs::remove_all(folder);
}

TEST_CASE("a disk that is full when the sitting is handed in is told, and nothing is lost") {
  const auto folder = fresh_folder("exam_full");
  const auto all = steps();
  auto desk = sit(folder);
  for (std::size_t i = 0; i + 1 < all.size(); ++i) {
    take(desk, all[i]);
  }
  const auto file = desk.log_file();
  const auto result = fs::path(file).replace_extension(".result");
  SECTION("no room for a line: it did not happen, and can be done again") {
    const auto before = log_lines(file);
    {
      const test::FullDisk full(fs::file_size(file) + 20);
      const auto outcome = desk.act(bench::Mix{"specimen", bench::Manner::Swirl, 5});
      CHECK_FALSE(outcome.done);
      CHECK_THAT(outcome.refused_because, Catch::Matchers::Contains("could not be written down"));
      CHECK_THAT(desk.finish(), Catch::Matchers::Contains("could not be written down"));
    }
    CHECK(log_lines(file) == before);
    CHECK(desk.act(bench::Mix{"specimen", bench::Manner::Swirl, 5}).done);
    CHECK(log_lines(file) == before + 1);
    CHECK(desk.finish() == "");
  }
  SECTION("no room for the result: it is written when the examination is opened again") {
    {
      const test::FullDisk full(fs::file_size(file) + 1000);
      CHECK_THAT(desk.finish(), Catch::Matchers::Contains("the result could not be written") &&
                                    Catch::Matchers::Contains("Open the examination again"));
    }
    CHECK_FALSE(fs::exists(result));
    CHECK_FALSE(desk.closed());
    const auto files = std::distance(fs::directory_iterator(folder), fs::directory_iterator());
    CHECK(files == 2); // The log and its chain; no half of a result.
    CHECK(sit(folder).closed());
  }
  const auto one = returned(result);
  INFO(in_words(one));
  CHECK_FALSE(one.to_be_reviewed());
  CHECK(one.log == [&] {
    std::string text;
    return strict::read_text(file, text) ? text : "";
  }());
  fs::remove_all(folder);
}
