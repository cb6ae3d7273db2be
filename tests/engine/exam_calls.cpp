// One person plays both sides with the program alone: keys, a pack for three learners, three sittings of
// which one is edited, opening, release, feedback.
#include "exam_play.hpp"

#include <algorithm>

using namespace matula::tests;

TEST_CASE("both sides of an examination are played by the program alone") {
  const Played play("exam_calls");
  // The instructor's keys, their backup and the keys made again from it.
  const auto made =
      play.call("keys new own.keys --name 'A. Instructor (invented)' --effort light --json").json();
  spill(play.folder / "own", made.at("passphrase").get<std::string>() + "\n");
  CHECK(made.at("bits") == 70);
  CHECK(play.call("keys backup own.keys -o paper.txt --passphrase-file own").code == 0);
  const auto again = play.call("keys restore again.keys --from paper.txt --effort light --json").json();
  CHECK(again.at("fingerprint") == made.at("fingerprint"));
  CHECK(play.call("keys new own.keys --name B").code == 1); // Keys are never written over.
  spill(play.folder / "weak", "urine1\n");
  CHECK_THAT(play.call("keys new weak.keys --name B --passphrase-file weak").err, Contains("soon guessed"));

  for (const std::string who : {"heron-07", "otter-12", "wren-03"}) {
    REQUIRE(play.call("keys device " + who + ".device --pseudonym " + who).code == 0);
    fs::rename(play.folder / (who + ".card.toml"), play.folder / "cards" / (who + ".card.toml"));
  }
  fs::copy(root / "scenarios" / "first_case.toml", play.folder / "ankles.toml");
  spill(play.folder / "spring.toml",
        "title = \"Spring practical\"\nminutes = 90\ndelete_after = \"2027-07-31\"\n"
        "[[case]]\nscenario = \"ankles.toml\"\n");
  const auto pack = play.call("seal spring.toml --key own.keys --cards cards -o spring.pack --effort light "
                              "--passphrase-file own --json")
                        .json();
  const std::string session = pack.at("session_code");
  spill(play.folder / "class", pack.at("class_passphrase").get<std::string>() + "\n");
  CHECK(pack.at("learners") == 3);
  const std::string sheet = slurp(play.folder / "spring.pack.sheet.txt");
  CHECK_THAT(sheet,
             Contains(session) && Contains(pack.at("fingerprint").get<std::string>()) && Contains("wren-03"));
  CHECK(play.call("pack spring.pack --json").json().at("fingerprint") == pack.at("fingerprint"));

  // Two sit it in one go; the third stops, takes a line out of the log, and goes on.
  fs::copy(root / "scenarios" / "first_case.steps.jsonl", play.folder / "steps.jsonl");
  std::string codes = "pseudonym,case,code\n";
  for (const std::string who : {"heron-07", "otter-12"}) {
    const auto closed = play.sit(who, session, "steps.jsonl").json();
    CHECK(closed.at("handed_in") == true);
    codes += who + ",unknown-1," + closed.at("closing_code").get<std::string>() + "\n";
  }
  std::string steps = slurp(play.folder / "steps.jsonl");
  spill(play.folder / "most.jsonl", steps.substr(0, steps.rfind('\n', steps.size() - 2) + 1));
  const auto stopped = play.sit("wren-03", session, "most.jsonl").json();
  CHECK(stopped.at("handed_in") == false);
  const fs::path log_file = play.folder / stopped.at("log").get<std::string>();
  std::string log = slurp(log_file);
  const auto at = log.find("\"do\":\"dispense\"");
  REQUIRE(at != std::string::npos);
  const auto line = log.rfind('\n', at) + 1;
  log.erase(line, log.find('\n', at) + 1 - line);
  spill(log_file, log);
  const auto cheated = play.sit("wren-03", session, "steps.jsonl");
  CHECK(cheated.code == 0);
  codes += "wren-03,unknown-1," + cheated.json().at("closing_code").get<std::string>() + "\n";
  spill(play.folder / "codes.csv", codes);
  CHECK_THAT(play.sit("heron-07", "ABCD", "steps.jsonl").err, Contains("a session code has 8"));

  for (const auto& entry : fs::directory_iterator(play.folder / "sittings")) {
    if (entry.path().extension() == ".result") {
      fs::copy(entry.path(), play.folder / "returned" / entry.path().filename());
    }
  }
  const std::string held = " returned --pack spring.pack --key own.keys --cards cards --codes codes.csv "
                           "--passphrase-file own ";
  const auto opened = play.call("open-results" + held + "--json").json();
  REQUIRE(opened.at("sittings").size() == 3);
  CHECK(opened.at("outstanding").empty());
  for (const auto& one : opened.at("sittings")) {
    INFO(one.dump(1));
    CHECK(one.at("to_be_reviewed") == (one.at("pseudonym") == "wren-03"));
    CHECK(one.at("case") == "ankles");
    CHECK(!one.at("marks").at("marks").empty());
  }
  const auto text = play.call("open-results" + held);
  CHECK_THAT(text.out, Contains("wren-03, unknown-1 (ankles): to be reviewed") &&
                           Contains("the log is not as it was signed") &&
                           Contains("heron-07, unknown-1 (ankles): in order"));

  // The same into a class's records, twice: the second time nothing is new.
  const auto stored = play.call("open-results" + held + "--store class.db --label spring");
  CHECK_THAT(stored.err, Contains("class.db: 3 new, 0 known already, 0 not taken"));
  CHECK_THAT(play.call("open-results" + held + "--store class.db --label spring").err,
             Contains("0 new, 3 known already"));
  CHECK_THAT(play.call("class list --store class.db").out, Contains("wren-03"));

  // Release, and each learner's own feedback; nobody else's.
  REQUIRE(play.call("release" + held + "-o sheets").code == 0);
  std::vector<fs::path> sheets;
  for (const auto& entry : fs::directory_iterator(play.folder / "sheets")) {
    sheets.push_back(entry.path());
  }
  REQUIRE(sheets.size() == 3);
  std::sort(sheets.begin(), sheets.end());
  std::string own_log;
  for (const auto& entry : fs::directory_iterator(play.folder / "sittings")) {
    const std::string name = entry.path().filename().string();
    own_log = name.rfind("heron-07", 0) == 0 && entry.path().extension() == ".jsonl" ? entry.path().string()
                                                                                     : own_log;
  }
  const auto feedback = play.call("feedback " + sheets[0].string() +
                                  " --device heron-07.device --pack spring.pack --log " + own_log + " --json")
                            .json();
  CHECK(feedback.at("replayed").at("marks") == feedback.at("marks").at("marks"));
  CHECK(feedback.at("checks") == "");
  CHECK_THAT(play.call("feedback " + sheets[0].string() + " --device otter-12.device").err,
             Contains("does not open"));

  // A pack that was damaged, a log given as a pack, and the wrong passphrase are refused with where and what.
  std::string bytes = slurp(play.folder / "spring.pack");
  bytes[bytes.size() / 2] ^= 1;
  spill(play.folder / "turned.pack", bytes);
  CHECK_THAT(play.call("pack turned.pack").err, Contains("turned.pack: found a pack that was changed"));
  CHECK_THAT(play.call("pack " + own_log).err, Contains("the log of a sitting"));
  CHECK_THAT(play.call("open-results returned --pack spring.pack --key own.keys --passphrase-file class").err,
             Contains("another passphrase"));
}
