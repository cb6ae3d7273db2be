// Sealed results in the instructor's room: the same outcome, sitting for sitting, as the program's own verb.

#include "engine/seal/passphrase.hpp"
#include "tests/engine/classroom_support.hpp"
#include "tests/engine/exam_play.hpp"

#include <algorithm>
#include <set>

using namespace matula;
using tests::Played;
namespace fs = std::filesystem;

namespace {

/// An examination of four: one honest, one whose code was copied wrongly, one who took a line out of the log,
/// and one whose sitting was worked in another session; and a result that was cut short.
class Examination {
public:
  Examination() : play("classroom_sealed") {
    tests::spill(play.folder / "own", "a quiet heron stood by 7 willows!\n");
    REQUIRE(play.call("keys new own.keys --name A --effort light --passphrase-file own").code == 0);
    for (const std::string who : {"elk-3", "heron-07", "otter-12", "wren-03", "vole-9"}) {
      REQUIRE(play.call("keys device " + who + ".device --pseudonym " + who).code == 0);
      fs::rename(play.folder / (who + ".card.toml"), play.folder / "cards" / (who + ".card.toml"));
    }
    fs::copy(tests::root / "scenarios" / "first_case.toml", play.folder / "ankles.toml");
    tests::spill(play.folder / "spring.toml", "title = \"Spring practical\"\nminutes = 90\n"
                                              "delete_after = \"2027-07-31\"\n[[case]]\n"
                                              "scenario = \"ankles.toml\"\n");
    const std::string seal = "seal spring.toml --key own.keys --cards cards --effort light "
                             "--passphrase-file own --json -o ";
    const std::string other = play.call(seal + "other.pack").json().at("session_code");
    const auto pack = play.call(seal + "spring.pack").json();
    tests::spill(play.folder / "class", pack.at("class_passphrase").get<std::string>() + "\n");
    sit_all(pack.at("session_code"), other);
  }

  Played play;

private:
  /// Longer than a signed checkpoint is far (16 lines), and quick to replay.
  static std::string steps() {
    std::string all = "{\"do\": \"protect\", \"gloves\": true, \"goggles\": true}\n"
                      "{\"do\": \"record\", \"item\": \"colour\", \"value\": \"straw\"}\n";
    for (int i = 0; i < 20; ++i) {
      all += "{\"do\": \"record\", \"item\": \"colour\", \"value\": \"yellow\"}\n";
    }
    return all;
  }

  void sit_all(const std::string& session, const std::string& other) {
    tests::spill(play.folder / "part.jsonl", steps());
    tests::spill(play.folder / "all.jsonl", steps() + "{\"do\": \"finish\"}\n");
    std::string codes = "pseudonym,case,code\n";
    const auto sat = [&](const std::string& who, const std::string& code) {
      const auto closed = play.sit(who, code, "all.jsonl").json();
      REQUIRE(closed.at("handed_in") == true);
      return who + ",unknown-1," + closed.at("closing_code").get<std::string>() + "\n";
    };
    codes += sat("heron-07", session);
    auto slip = sat("otter-12", session);
    slip[slip.size() - 2] = slip[slip.size() - 2] == 'A' ? 'B' : 'A';
    codes += slip + sat("elk-3", other);
    const fs::path log = play.folder / play.sit("wren-03", session, "part.jsonl").json().at("log");
    std::string text = tests::slurp(log);
    const auto line = text.find("\"straw\"");
    REQUIRE(line != std::string::npos);
    const auto begin = text.rfind('\n', line) + 1;
    text.erase(begin, text.find('\n', begin) + 1 - begin);
    tests::spill(log, text);
    codes += sat("wren-03", session);
    tests::spill(play.folder / "codes.csv", codes);
    for (const auto& entry : fs::directory_iterator(play.folder / "sittings")) {
      if (entry.path().extension() == ".result") {
        fs::copy(entry.path(), play.folder / "returned" / entry.path().filename());
      }
    }
    const std::string bytes = tests::slurp(fs::directory_iterator(play.folder / "returned")->path());
    tests::spill(play.folder / "returned" / "cut.result", bytes.substr(0, bytes.size() / 2));
  }
};

classroom::SealedOrder order_of(const Played& play) {
  classroom::SealedOrder order;
  order.files = {play.folder / "returned", play.folder / "spring.pack", play.folder / "own.keys",
                 play.folder / "cards", play.folder / "codes.csv"};
  order.label = "spring";
  order.assets_folder = assets::folder();
  order.now_s = 1800000000;
  return order;
}

classroom::SealedEnd taken(classroom::Classroom& room, const classroom::SealedOrder& order,
                           const std::string& words) {
  room.take_sealed(order, seal::passphrase_bytes(words));
  REQUIRE(test::wait_for(room, [&] { return room.sealed_end().has_value() && !room.busy(); }));
  return *room.sealed_end();
}

const std::string own_words = "a quiet heron stood by 7 willows!";

} // namespace

TEST_CASE("sealed results come into the store as the verb brings them, each outcome in its words",
          "[classroom]") {
  const Examination examination;
  const Played& play = examination.play;
  test::OpenRoom open(play.folder / "room.db", {});
  auto& room = open.room;
  const auto end = taken(room, order_of(play), own_words);
  INFO(end.words());
  CHECK(end.words() == "Spring practical: 4 results opened, 3 of them to be reviewed, 1 files that could not "
                       "be opened. 4 new, 0 known already, 0 not taken.");
  const auto said = play.call("open-results returned --pack spring.pack --key own.keys --cards cards --codes "
                              "codes.csv --passphrase-file own --json --store verb.db --label spring");
  CHECK(said.code == 1); // For the file that was cut.
  const auto verb = nlohmann::json::parse(said.out);
  CHECK(verb.at("examination") == end.examination);
  CHECK(verb.at("rules_changed_since_sealing") == end.rules_changed);
  CHECK(verb.at("outstanding") == end.outstanding);
  CHECK(end.outstanding == std::vector<std::string>{"vole-9, unknown-1"});
  REQUIRE(verb.at("sittings").size() == end.sittings.size());
  for (std::size_t i = 0; i < end.sittings.size(); ++i) {
    const auto& mine = end.sittings[i];
    const auto& its = verb.at("sittings")[i];
    CHECK(its.at("pseudonym") == mine.pseudonym);
    CHECK(its.at("to_be_reviewed") == mine.to_be_reviewed);
    CHECK(mine.kept == "new, number " + std::to_string(mine.number));
    for (const auto& check : its.at("checks")) {
      const auto words = check.at("words").get<std::string>();
      const bool told = std::any_of(mine.checks.begin(), mine.checks.end(), [&](const std::string& one) {
        return one.find(words) != std::string::npos;
      });
      CHECK(told == (check.at("state") != "good"));
    }
  }
  REQUIRE(end.unreadable.size() == 1);
  CHECK(end.unreadable[0].find("cut.result: " + verb.at("unreadable")[0].at("found").get<std::string>()) ==
        0);
  const auto words = [&](const std::string& who) {
    const auto found = std::find_if(end.sittings.begin(), end.sittings.end(),
                                    [&](const auto& one) { return one.pseudonym == who; });
    return found == end.sittings.end() || found->checks.empty() ? std::string() : found->checks.front();
  };
  CHECK(words("heron-07").empty());
  CHECK(words("otter-12").find("to be reviewed: closing code: the register says") == 0);
  CHECK(words("wren-03").find("to be reviewed: chain:") == 0);
  CHECK(words("elk-3").find("to be reviewed: session: the session code is") == 0);

  records::Store mine((play.folder / "room.db").string());
  records::Store its((play.folder / "verb.db").string());
  CHECK(test::dump(mine) == test::dump(its));
  const auto rows = mine.sittings();
  const auto other_rows = its.sittings();
  REQUIRE(rows.size() == 4);
  for (std::size_t i = 0; i < rows.size(); ++i) {
    CHECK(rows[i].checks == other_rows[i].checks);
    CHECK(rows[i].keep_until == "2027-07-31");
  }

  // Once more nothing is new; one sitting on its page says what was found.
  const auto again = taken(room, order_of(play), own_words);
  CHECK(again.sum->known == 4);
  CHECK(room.page()->all_sittings == 4);
  const auto otter =
      std::find_if(rows.begin(), rows.end(), [](auto& row) { return row.pseudonym == "otter-12"; });
  REQUIRE(otter != rows.end());
  room.open_sitting(otter->number);
  REQUIRE(test::wait_for(room, [&] { return room.sitting().has_value(); }));
  CHECK(room.sitting()->checks == std::vector<std::string>{words("otter-12")});

  SECTION("what cannot be opened is said, and nothing comes into the store") {
    CHECK(
        taken(room, order_of(play), "a quiet heron stood by 8 willows!").trouble.find("another passphrase") !=
        std::string::npos);
    auto order = order_of(play);
    order.files.pack = play.folder / "other.pack";
    const auto others = taken(room, order, own_words);
    CHECK(others.words().find("4 of them to be reviewed") != std::string::npos);
    order = order_of(play);
    order.files.keys = play.folder / "codes.csv";
    CHECK_FALSE(taken(room, order, own_words).trouble.empty());
    order = order_of(play);
    order.files.folder = play.folder / "nowhere";
    CHECK(taken(room, order, own_words).trouble.find("no readable folder") != std::string::npos);
    CHECK(room.page()->all_sittings == 4);
  }
}
