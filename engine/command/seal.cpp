#include "engine/assets/world.hpp"
#include "engine/command/exam_files.hpp"
#include "engine/command/exit_codes.hpp"
#include "engine/command/verbs.hpp"
#include "engine/desk/wall_clock.hpp"
#include "engine/examination/plan.hpp"
#include "engine/examination/room_sheet.hpp"
#include "engine/seal/frame.hpp"
#include "engine/seal/passphrase.hpp"
#include "engine/strict/file.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <filesystem>
#include <ostream>

namespace matula::command {
namespace {

std::vector<std::string> pseudonyms_of(const std::map<std::string, seal::Key>& cards) {
  std::vector<std::string> pseudonyms;
  for (const auto& [pseudonym, key] : cards) {
    pseudonyms.push_back(pseudonym);
  }
  return pseudonyms;
}

/// Both sides of the examination, drawn.
seal::Maybe<examination::PackContents> contents_of(const examination::Plan& plan,
                                                   const std::vector<std::string>& pseudonyms) {
  examination::PackContents contents;
  contents.title = plan.title;
  contents.minutes = plan.minutes;
  contents.delete_after = plan.delete_after;
  contents.sealed_at_s = desk::now_s();
  contents.nonce = seal::draw_letters(seal::nonce_letters);
  const seal::Bytes secret = seal::random_bytes(contents.secret.size());
  std::copy(secret.begin(), secret.end(), contents.secret.begin());
  (void)strict::read_text(assets::folder() / "scoring" / "rules.toml", contents.rules);
  scenario::Problems problems;
  const auto catalogue = assets::load_catalogue(assets::folder(), problems);
  if (!problems.empty()) {
    return tl::make_unexpected(problems);
  }
  auto whole = examination::draw(plan, pseudonyms, contents.secret, assets::folder(), catalogue);
  if (!whole) {
    return tl::make_unexpected(whole.error());
  }
  auto halves = examination::bench_halves(*whole, catalogue);
  if (!halves) {
    return tl::make_unexpected(halves.error());
  }
  contents.key = std::move(*whole);
  contents.bench = std::move(*halves);
  return contents;
}

nlohmann::ordered_json facts_of(const examination::Pack& pack) {
  return {{"title", pack.head.title},
          {"fingerprint", examination::fingerprint(pack)},
          {"pack", seal::hex(pack.head.id)},
          {"minutes", pack.head.minutes},
          {"delete_after", pack.head.delete_after},
          {"signed_by", seal::fingerprint(pack.head.sealing, pack.head.signing)},
          {"program", pack.head.program},
          {"bytes", pack.file.size()}};
}

void print(const nlohmann::ordered_json& facts, std::ostream& out) {
  for (const auto& [key, value] : facts.items()) {
    out << fmt::format("{:<14}{}\n", key, value.is_string() ? value.get<std::string>() : value.dump());
  }
}

/// A pack is never sealed the same again: results worked from the one that was handed out would open with
/// nothing.
scenario::Problems refuse_overwriting(const std::vector<std::string>& files) {
  for (const auto& file : files) {
    std::error_code ignored;
    if (std::filesystem::exists(file, ignored)) {
      return seal::problem(file, "a file that is already there",
                           "a new name, or this one moved away first: what was handed out before needs its "
                           "pack and its sheet");
    }
  }
  return {};
}

} // namespace

int run_seal(const Seal& asked, std::ostream& out, std::ostream& err) {
  const std::string sheet_file = asked.sheet.empty() ? asked.output + ".sheet.txt" : asked.sheet;
  if (const auto there = refuse_overwriting({asked.output, sheet_file}); !there.empty()) {
    return tell(there, err);
  }
  const auto plan = examination::read_plan(asked.plan);
  const auto cards = seal::read_cards(asked.cards);
  if (!plan || !cards) {
    return tell(plan ? cards.error() : plan.error(), err);
  }
  const auto contents = contents_of(*plan, pseudonyms_of(*cards));
  if (!contents) {
    return tell(contents.error(), err);
  }
  const auto keys = unlock(asked.keys, asked.passphrase_file);
  if (!keys) {
    return tell(keys.error(), err);
  }
  const std::string words = seal::draw_letters(seal::class_letters);
  auto file = examination::seal_pack(*contents, *keys, seal::passphrase_bytes(words), effort_of(asked.effort),
                                     asked.output);
  const auto pack =
      file ? examination::read_pack(std::move(*file), asked.output) : tl::make_unexpected(file.error());
  if (!pack) {
    return tell(pack.error(), err);
  }
  const std::string sheet = examination::room_sheet(*pack, contents->key, words, contents->nonce);
  auto problems = seal::write_bytes(sheet_file, seal::view_of(sheet), true);
  if (problems.empty()) {
    problems = seal::write_bytes(asked.output, pack->file);
  }
  if (!problems.empty()) {
    return tell(problems, err);
  }
  auto facts = facts_of(*pack);
  facts["learners"] = contents->key.size();
  facts["cases"] = plan->cases.size();
  facts["file"] = asked.output;
  facts["sheet"] = sheet_file;
  if (asked.json) {
    facts["class_passphrase"] = words;
    facts["session_code"] = contents->nonce;
    out << facts.dump(2) << '\n';
  } else {
    print(facts, out);
    out << fmt::format("The class passphrase ({} bits) and the session code stand on the sheet.\n",
                       seal::class_letters * seal::bits_a_letter_drawn);
  }
  return exit_good;
}

int run_show_pack(const ShowPack& asked, std::ostream& out, std::ostream& err) {
  const auto pack = examination::load_pack(asked.pack);
  if (!pack) {
    return tell(pack.error(), err);
  }
  if (asked.json) {
    out << facts_of(*pack).dump(2) << '\n';
  } else {
    print(facts_of(*pack), out);
  }
  return exit_good;
}

} // namespace matula::command
