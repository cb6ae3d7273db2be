#include "engine/examination/halves.hpp"
#include "engine/examination/returned.hpp"
#include "engine/examination/time_taken.hpp"
#include "engine/seal/base32.hpp"
#include "engine/sitting/log.hpp"

#include <algorithm>

namespace matula::examination {

namespace {

using State = Check::State;

Check good(const std::string& what, const std::string& words) {
  return {what, State::Good, words};
}
Check review(const std::string& what, const std::string& words) {
  return {what, State::ToBeReviewed, words};
}
Check not_checked(const std::string& what, const std::string& words) {
  return {what, State::NotChecked, words};
}

/// The chain as the log itself gives it: the hash after every number of records.
std::vector<seal::Hash> worked_out(const ChainStart& start, const std::string& log) {
  const auto lines = whole_lines(log);
  std::vector<seal::Hash> hashes;
  if (!lines.empty()) {
    hashes.push_back(chain_start(start, lines.front()));
    for (std::size_t i = 1; i < lines.size(); ++i) {
      hashes.push_back(chain_next(hashes.back(), lines[i]));
    }
  }
  return hashes;
}

std::string line_words(std::uint64_t records) {
  return "line " + std::to_string(records + 1) + " of the log";
}

/// The first checkpoint that does not fit the log, in words; "" when all do.
std::string first_difference(const Chain& chain, const std::vector<seal::Hash>& hashes) {
  std::uint64_t fitted = 0;
  std::int64_t at_s = 0;
  for (const auto& one : chain.checkpoints) {
    if (!verify(one, hashes.front(), chain.start.device)) {
      return "the signature of the checkpoint after " + line_words(one.records) +
             " does not fit: it, or what the chain begins with, is not as it was signed";
    }
    if (one.records >= hashes.size()) {
      return "the log has " + std::to_string(hashes.size()) + " lines, but " + line_words(one.records) +
             " was signed: lines were taken out";
    }
    if (hashes[one.records] != one.hash) {
      return "the log is not as it was signed: something up to " + line_words(one.records) +
             " was changed, put in or taken out (up to " + line_words(fitted) + " it fits)";
    }
    if (one.at_s < at_s) {
      return "the clock of the learner's machine went back before " + line_words(one.records);
    }
    fitted = one.records;
    at_s = one.at_s;
  }
  return "";
}

Check check_chain(const Chain& chain, const std::vector<seal::Hash>& hashes, const HandedIn& result) {
  if (hashes.empty() || chain.checkpoints.empty()) {
    return review("chain", "there is no log with a signed checkpoint");
  }
  if (const std::string differs = first_difference(chain, hashes); !differs.empty()) {
    return review("chain", differs);
  }
  const Checkpoint& last = chain.checkpoints.back();
  if (last.why != "handed in" || last.records + 1 != hashes.size() || result.log.back() != '\n') {
    return review("chain", "the last signature is after " + line_words(last.records) + " and says \"" +
                               last.why + "\"; the log has " + std::to_string(hashes.size()) + " lines");
  }
  const auto resumed = std::count_if(chain.checkpoints.begin(), chain.checkpoints.end(),
                                     [](const Checkpoint& one) { return one.why == "resumed"; });
  return good("chain", std::to_string(chain.checkpoints.size()) + " checkpoints fit the log" +
                           (resumed == 0   ? ""
                            : resumed == 1 ? "; gone on with once"
                                           : "; gone on with " + std::to_string(resumed) + " times"));
}

Check check_session(const ChainStart& start, const HandedIn& result, const Pack& pack,
                    const KeySection& key) {
  if (result.pack != pack.head.id || start.pack != pack.hash) {
    return review("session", "worked from another pack than this one");
  }
  if (start.pseudonym != result.pseudonym || start.label != result.label || start.device != result.device) {
    return review("session", "the chain is of '" + start.pseudonym + "' at '" + start.label +
                                 "', the result of '" + result.pseudonym + "' at '" + result.label + "'");
  }
  if (seal::tidy(start.nonce) != seal::tidy(key.nonce)) {
    return review("session", "the session code is " + start.nonce + "; in the room it was " + key.nonce);
  }
  return good("session", "session code " + start.nonce);
}

Check check_device(const HandedIn& result, const Register& held) {
  if (held.devices.empty()) {
    return not_checked("device", "no learners' cards were given");
  }
  const auto found = held.devices.find(result.pseudonym);
  if (found == held.devices.end()) {
    return review("device", "no card of '" + result.pseudonym + "' is in the register");
  }
  return found->second == result.device
             ? good("device", "signed by the device on the card")
             : review("device",
                      "signed by another device than the one on the card of '" + result.pseudonym + "'");
}

Check check_code(const Returned& returned, const Register& held) {
  if (held.codes.empty()) {
    return not_checked("closing code",
                       "no register of closing codes was given; it is " + returned.closing_code);
  }
  auto found = held.codes.find({returned.pseudonym, returned.label});
  found = found == held.codes.end() ? held.codes.find({returned.pseudonym, ""}) : found;
  if (found == held.codes.end()) {
    return review("closing code", "the register has no code of '" + returned.pseudonym + "'");
  }
  return seal::tidy(found->second) == seal::tidy(returned.closing_code)
             ? good("closing code", returned.closing_code)
             : review("closing code", "the register says " + found->second + ", this sitting gives " +
                                          returned.closing_code +
                                          ": it is not the one that was closed in "
                                          "the room, or the code was copied wrongly");
}

Check check_scenario(const Returned& returned, const sitting::Header& header, std::uint64_t chain_seed) {
  if (returned.scenario_text.empty()) {
    return review("scenario",
                  "the pack has no case '" + returned.label + "' for '" + returned.pseudonym + "'");
  }
  return header.scenario_hash == returned.bench_hash && header.seed == chain_seed
             ? good("scenario", "the variant that was drawn for this learner")
             : review("scenario", "the log names another specimen (" + header.scenario_hash +
                                      ") than the variant drawn for this learner (" + returned.bench_hash +
                                      ")");
}

Check check_program(const std::string& began_with) {
  return began_with == MATULA_VERSION
             ? good("program", "version " + began_with)
             : review("program", "worked with version " + began_with +
                                     ", marked with " MATULA_VERSION ": the bench may answer otherwise");
}

} // namespace

bool Returned::to_be_reviewed() const {
  return std::any_of(checks.begin(), checks.end(),
                     [](const Check& one) { return one.state == State::ToBeReviewed; });
}

Returned check(const HandedIn& result, const std::string& file, const Pack& pack, const KeySection& key,
               const Register& held) {
  Returned returned{
      file, seal::hex(result.pack), result.pseudonym, result.label, "", "", "", result.log, "", 0, 0, {}};
  if (const CaseText* drawn = find_case(key.students, result.pseudonym, result.label)) {
    returned.case_key = drawn->key;
    returned.scenario_text = drawn->text;
    returned.bench_hash = bench_hash(drawn->text);
  }
  auto& checks = returned.checks;
  checks.push_back(receipt_fits(result) ? good("receipt", "signed as a whole by its device")
                                        : review("receipt", "the signature over the whole result does not "
                                                            "fit: something in it was changed"));
  const auto chain = parse_chain(result.chain, file);
  const auto log = sitting::parse_log(result.log, file);
  if (!chain || !log) {
    checks.push_back(review("chain", chain ? "the log cannot be read: " + log.error().front().found
                                           : "the chain cannot be read: " + chain.error().front().found));
    return returned;
  }
  const auto hashes = worked_out(chain->start, result.log);
  returned.closing_code = closing_code(hashes.back());
  if (!chain->checkpoints.empty()) {
    returned.begun_at_s = chain->checkpoints.front().at_s;
    returned.ended_at_s = chain->checkpoints.back().at_s;
  }
  checks.push_back(check_chain(*chain, hashes, result));
  checks.push_back(check_session(chain->start, result, pack, key));
  checks.push_back(check_device(result, held));
  checks.push_back(check_code(returned, held));
  checks.push_back(check_scenario(returned, log->header, chain->start.seed));
  checks.push_back(check_time(returned.begun_at_s, returned.ended_at_s, pack, "took"));
  checks.push_back(check_program(chain->start.program));
  return returned;
}

} // namespace matula::examination
