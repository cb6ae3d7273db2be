// The chain of a sitting and what is handed in: unchanged it fits, changed anywhere it does not.
#include "engine/examination/chain_writer.hpp"
#include "engine/examination/result.hpp"
#include "engine/examination/returned.hpp"
#include "engine/seal/frame.hpp"
#include "engine/sitting/event_json.hpp"
#include "engine/sitting/log.hpp"
#include "engine/strict/file.hpp"
#include "exam_support.hpp"

#include <fstream>

using namespace matula;
using namespace matula::tests;
using Catch::Matchers::Contains;
using examination::Check;

namespace {

constexpr std::int64_t begun_s = 1795000000;

/// A clock that goes on by ten seconds each time it is looked at.
struct Ticking {
  std::int64_t now_s = begun_s - 10;
  std::int64_t operator()() { return now_s += 10; }
};

/// The examination every test here takes part in.
struct Room {
  examination::PackContents made = contents();
  examination::Pack pack = opened(sealed(made));
  examination::KeySection key = *examination::open_key(pack, instructor());
  std::string bench = made.bench[0].cases[0].text;

  [[nodiscard]] examination::ChainStart start() const {
    return {pack.hash,      made.nonce, "heron-07", "unknown-1", learner().signing.open_half(),
            MATULA_VERSION, 101};
  }
  [[nodiscard]] std::string first_line() const {
    sitting::Header header;
    header.scenario_key = "unknown-1";
    header.scenario_file = "unknown-1.toml";
    header.scenario_hash = examination::bench_hash(made.key[0].cases[0].text);
    header.seed = 101;
    header.program = MATULA_VERSION;
    return sitting::to_line(header);
  }
  [[nodiscard]] examination::Returned check(const examination::HandedIn& result,
                                            const examination::Register& held = {}) const {
    return examination::check(result, "a.result", pack, key, held);
  }
};

const Room& room() {
  static const Room one;
  return one;
}

std::vector<std::string> some_lines(int count) {
  std::vector<std::string> lines;
  for (int i = 0; i < count; ++i) {
    lines.push_back(sitting::to_line({i * 5.0, sitting::Record{"colour", "straw " + std::to_string(i)}}));
  }
  lines.push_back(sitting::to_line({count * 5.0, sitting::Finish{}}));
  return lines;
}

/// A sitting of `count` lines written and signed as the desk does it.
examination::HandedIn worked(int count, const examination::ChainStart& start = room().start(),
                             Ticking clock = {}) {
  const auto folder = fresh_folder("chain");
  auto chain = examination::ChainWriter::begin(folder / "a.chain", start, room().first_line(),
                                               learner().signing, clock);
  REQUIRE(chain);
  std::string log = room().first_line() + "\n";
  for (const auto& line : some_lines(count)) {
    log += line + "\n";
    chain->take(line);
  }
  REQUIRE(chain->checkpoint("handed in") == "");
  examination::HandedIn result;
  result.pack = room().pack.head.id;
  result.pseudonym = start.pseudonym;
  result.label = start.label;
  result.device = learner().signing.open_half();
  result.program = MATULA_VERSION;
  result.log = log;
  REQUIRE(strict::read_text(folder / "a.chain", result.chain));
  std::filesystem::remove_all(folder);
  return result;
}

seal::Bytes sealed_result(const examination::HandedIn& result) {
  const auto file = examination::seal_result(result, learner().signing, room().pack.head.sealing, "a.result");
  REQUIRE(file);
  return *file;
}

examination::HandedIn reopened(const examination::HandedIn& result) {
  const auto back = examination::open_result(sealed_result(result), instructor(), "a.result");
  REQUIRE(back);
  return *back;
}

std::string words_of(const examination::Returned& returned, const std::string& what) {
  for (const Check& one : returned.checks) {
    if (one.what == what) {
      return (one.state == Check::State::ToBeReviewed ? "review: " : "") + one.words;
    }
  }
  return "no check '" + what + "'";
}

} // namespace

TEST_CASE("an untouched sitting passes every check and its closing code is that of the chain") {
  const auto result = reopened(worked(40));
  const auto returned = room().check(result);
  for (const Check& one : returned.checks) {
    INFO(one.what + ": " + one.words);
    CHECK(one.state != Check::State::ToBeReviewed);
  }
  CHECK_FALSE(returned.to_be_reviewed());
  CHECK(returned.case_key == "swollen_ankles");
  CHECK(returned.closing_code.size() == 9);
  CHECK_THAT(words_of(returned, "chain"), Contains("4 checkpoints")); // begun, after 16 and 32, handed in
  CHECK(returned.ended_at_s - returned.begun_at_s == 30);
}

TEST_CASE("every single bit of a sealed result that is turned over is noticed") {
  const auto file = sealed_result(worked(2));
  std::size_t noticed = 0;
  for (std::size_t bit = 0; bit < file.size() * 8; ++bit) {
    auto turned = file;
    turned[bit / 8] ^= static_cast<unsigned char>(1U << (bit % 8));
    noticed += examination::open_result(turned, instructor(), "a.result") ? 0 : 1;
  }
  CHECK(noticed == file.size() * 8);
}

TEST_CASE("every single bit of a signed log or chain that is turned over is noticed by the chain alone") {
  // As if whoever turned it could also make the receipt anew.
  auto result = worked(3);
  std::size_t noticed = 0;
  std::size_t asked = 0;
  for (std::string* text : {&result.log, &result.chain}) {
    for (std::size_t bit = 0; bit < text->size() * 8; ++bit) {
      const char before = (*text)[bit / 8];
      (*text)[bit / 8] = static_cast<char>(static_cast<unsigned char>(before) ^ (1U << (bit % 8)));
      const auto returned = room().check(result);
      noticed += words_of(returned, "chain").rfind("review: ", 0) == 0 ||
                         words_of(returned, "session").rfind("review: ", 0) == 0
                     ? 1
                     : 0;
      ++asked;
      (*text)[bit / 8] = before;
    }
  }
  CHECK(noticed == asked);
}

TEST_CASE("every single bit of what is handed in is under the receipt") {
  auto result = reopened(worked(1));
  REQUIRE(examination::receipt_fits(result));
  std::size_t noticed = 0;
  std::size_t asked = 0;
  const auto turn_all = [&](auto& bytes) {
    for (std::size_t bit = 0; bit < bytes.size() * 8; ++bit) {
      const auto mask = static_cast<unsigned char>(1U << (bit % 8));
      bytes[bit / 8] = static_cast<std::remove_reference_t<decltype(bytes[0])>>(bytes[bit / 8] ^ mask);
      noticed += examination::receipt_fits(result) ? 0 : 1;
      ++asked;
      bytes[bit / 8] = static_cast<std::remove_reference_t<decltype(bytes[0])>>(bytes[bit / 8] ^ mask);
    }
  };
  turn_all(result.pack);
  turn_all(result.pseudonym);
  turn_all(result.label);
  turn_all(result.device);
  turn_all(result.program);
  turn_all(result.log);
  turn_all(result.chain);
  turn_all(result.receipt);
  CHECK(noticed == asked);
  CHECK(examination::receipt_fits(result));
}

TEST_CASE("lines changed, taken out, put in or added are told with their place") {
  auto result = worked(40);
  const std::string log = result.log;
  const auto at = log.find("straw 20");
  result.log[at + 6] = '3';
  CHECK_THAT(words_of(room().check(result), "chain"),
             Contains("up to line 33 of the log") && Contains("up to line 17 of the log it fits"));
  CHECK_THAT(words_of(room().check(result), "receipt"), Contains("review"));
  const auto line_at = log.rfind('\n', at) + 1;
  const auto line_end = log.find('\n', at) + 1;
  result.log = log.substr(0, line_at) + log.substr(line_end);
  CHECK_THAT(words_of(room().check(result), "chain"), Contains("review"));
  result.log = log.substr(0, line_end) + log.substr(line_at);
  CHECK_THAT(words_of(room().check(result), "chain"), Contains("review"));
  result.log = log.substr(0, log.rfind('\n', log.size() - 2) + 1);
  CHECK_THAT(words_of(room().check(result), "chain"), Contains("lines were taken out"));
  result.log = log;
  result.chain = result.chain.substr(0, result.chain.rfind('\n', result.chain.size() - 2) + 1);
  CHECK_THAT(words_of(room().check(result), "chain"), Contains("says \"counted\""));
}

TEST_CASE("the session code, the device, the closing code, the case and the time are held against the room") {
  const auto good = worked(3);
  auto start = room().start();
  start.nonce = seal::draw_letters(seal::nonce_letters);
  CHECK_THAT(words_of(room().check(reopened(worked(3, start))), "session"),
             Contains("review: the session code is " + start.nonce));
  start = room().start();
  start.pack[0] ^= 1U;
  CHECK_THAT(words_of(room().check(reopened(worked(3, start))), "session"), Contains("another pack"));
  start = room().start();
  start.label = "unknown-9";
  CHECK_THAT(words_of(room().check(reopened(worked(3, start))), "scenario"), Contains("no case 'unknown-9'"));

  examination::Register held;
  held.devices["heron-07"] = learner().signing.open_half();
  const std::string code = room().check(good).closing_code;
  held.codes[{"heron-07", "unknown-1"}] = code;
  const auto returned = room().check(reopened(good), held);
  CHECK_FALSE(returned.to_be_reviewed());
  CHECK_THAT(words_of(returned, "device"), Contains("on the card"));
  held.codes[{"heron-07", "unknown-1"}] = code == "AAAA-AAAA" ? "BBBB-BBBB" : "AAAA-AAAA";
  CHECK_THAT(words_of(room().check(good, held), "closing code"), Contains("this sitting gives " + code));
  held.devices["heron-07"] = learner("otter-12").signing.open_half();
  CHECK_THAT(words_of(room().check(good, held), "device"), Contains("another device"));
  held.devices.erase("heron-07");
  held.devices["otter-12"] = learner("otter-12").signing.open_half();
  CHECK_THAT(words_of(room().check(good, held), "device"), Contains("no card"));
}

TEST_CASE("a chain is gone on with after a kill, and a log edited in between is told") {
  const auto folder = fresh_folder("resumed");
  const auto file = folder / "a.chain";
  const auto lines = some_lines(30);
  std::string log = room().first_line() + "\n";
  {
    auto chain = examination::ChainWriter::begin(file, room().start(), room().first_line(), learner().signing,
                                                 Ticking());
    REQUIRE(chain);
    for (std::size_t i = 0; i < 20; ++i) {
      log += lines[i] + "\n";
      chain->take(lines[i]);
    }
  }
  std::ofstream(file, std::ios::app) << "{\"records\": 2"; // The piece of a line a kill leaves behind.
  const auto finish = [&](std::string text) {
    const auto copy = folder / "copy.chain";
    std::filesystem::copy_file(file, copy, std::filesystem::copy_options::overwrite_existing);
    auto chain = examination::ChainWriter::resume(copy, room().start(), text, learner().signing, Ticking());
    REQUIRE(chain);
    for (std::size_t i = 20; i < lines.size(); ++i) {
      text += lines[i] + "\n";
      chain->take(lines[i]);
    }
    REQUIRE(chain->checkpoint("handed in") == "");
    auto result = worked(1);
    result.log = text;
    REQUIRE(strict::read_text(copy, result.chain));
    return words_of(room().check(result), "chain");
  };
  CHECK_THAT(finish(log),
             Contains("the clock of the learner's machine went back")); // Begun anew at the start.
  std::string edited = log;
  edited[log.find("straw 7") + 6] = '8';
  CHECK_THAT(finish(edited), Contains("review: the log is not as it was signed"));
  auto other = room().start();
  other.nonce = seal::draw_letters(seal::nonce_letters);
  CHECK_THAT(said(examination::ChainWriter::resume(file, other, log, learner().signing, Ticking())),
             Contains("another sitting, session or device"));
  std::filesystem::remove_all(folder);
}

TEST_CASE("a folder tells copies from second sittings, what is missing, and what is no result") {
  const auto folder = fresh_folder("returned");
  const auto put = [&](const char* name, const seal::Bytes& bytes) {
    REQUIRE(seal::write_bytes(folder / name, bytes).empty());
  };
  const auto first = worked(3);
  put("a.result", sealed_result(first));
  put("b.result", sealed_result(first));
  put("log.result", {'{', '}', '\n'});
  put("empty.result", {});
  const auto open = [&] {
    auto found = examination::open_folder(folder, room().pack, room().key, instructor(), {});
    REQUIRE(found);
    return std::move(*found);
  };
  auto found = open();
  REQUIRE(found.sittings.size() == 1);
  CHECK_FALSE(found.sittings[0].to_be_reviewed());
  CHECK_THAT(words_of(found.sittings[0], "copies"), Contains("b.result"));
  CHECK(found.unreadable.size() == 2);
  CHECK(found.outstanding == std::vector<std::string>{"otter-12, unknown-1"});
  put("c.result", sealed_result(worked(4)));
  found = open();
  REQUIRE(found.sittings.size() == 2);
  CHECK_THAT(words_of(found.sittings[0], "copies"), Contains("b.result"));
  CHECK(found.sittings[0].to_be_reviewed());
  CHECK(found.sittings[1].to_be_reviewed());
  std::filesystem::remove_all(folder);
}

TEST_CASE("the minutes of an examination are for all cases of a learner") {
  const auto time_of_both = [](std::int64_t minutes_later) {
    const auto folder = fresh_folder("together");
    auto start = room().start();
    REQUIRE(seal::write_bytes(folder / "a.result", sealed_result(worked(3))).empty());
    start.label = "unknown-2";
    const auto second = worked(3, start, {begun_s + minutes_later * 60});
    REQUIRE(seal::write_bytes(folder / "b.result", sealed_result(second)).empty());
    const auto found = examination::open_folder(folder, room().pack, room().key, instructor(), {});
    REQUIRE(found);
    std::filesystem::remove_all(folder);
    REQUIRE(found->sittings.size() == 2);
    std::vector<std::string> words;
    for (const auto& sitting : found->sittings) {
      for (const Check& one : sitting.checks) {
        if (one.what == "time" && one.state == Check::State::ToBeReviewed) {
          words.push_back(one.words);
        }
      }
    }
    return words;
  };
  CHECK(time_of_both(91).empty()); // 90 minutes and two of grace.
  const std::string late = "2 sittings together took 95 of 90 minutes by the learner's own clock";
  CHECK(time_of_both(95) == std::vector<std::string>{late, late});
  CHECK(time_of_both(-95) == std::vector<std::string>{late, late});
}

TEST_CASE("results sealed to others, logs given as results and results given as packs are named") {
  const auto file = sealed_result(worked(2));
  CHECK_THAT(said(examination::open_result(file, seal::make_keys("B"), "a.result")),
             Contains("these keys do not open"));
  const std::string log = worked(1).log;
  CHECK_THAT(said(examination::open_result(seal::view_of(log), instructor(), "a.result")),
             Contains("the log of a sitting, not sealed; a sealed result"));
  CHECK_THAT(said(examination::read_pack(file, "a.pack")), Contains("a sealed result; an examination pack"));
  auto binary = worked(1);
  binary.log += "\xFF\xFE";
  CHECK_THAT(said(examination::open_result(sealed_result(binary), instructor(), "a.result")),
             Contains("make no sense"));
}

TEST_CASE("the register of closing codes is read with or without cases, and wrong lines are told") {
  const auto folder = fresh_folder("codes");
  const auto read = [&](const std::string& text) {
    std::ofstream(folder / "codes.csv", std::ios::binary) << text;
    return examination::read_codes(folder / "codes.csv");
  };
  const auto codes = read("pseudonym,code\r\nheron-07, abcd-efgh\r\n\"otter-12\",unknown-1,ABCDEFGH\n\n");
  REQUIRE(codes);
  CHECK(codes->size() == 2);
  CHECK(codes->at({"heron-07", ""}) == "abcd-efgh");
  const auto wrong = read("heron-07,ABCD-EFGH\nheron-07,ABCD-EFGH\nno\nheron-08,ABC\n\xFF\xFE,ABCDEFGH\n");
  REQUIRE_FALSE(wrong);
  CHECK(wrong.error().size() == 4);
  CHECK(wrong.error()[1].line == 3);
  std::filesystem::remove_all(folder);
}
