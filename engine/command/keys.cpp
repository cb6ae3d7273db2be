#include "engine/command/exam_files.hpp"
#include "engine/command/exit_codes.hpp"
#include "engine/command/verbs.hpp"
#include "engine/seal/frame.hpp"
#include "engine/seal/names.hpp"
#include "engine/seal/passphrase.hpp"
#include "engine/strict/file.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <filesystem>
#include <ostream>

namespace matula::command {
namespace {

void print(const nlohmann::ordered_json& facts, bool json, std::ostream& out) {
  if (json) {
    out << facts.dump(2) << '\n';
    return;
  }
  for (const auto& [key, value] : facts.items()) {
    out << key << ": " << (value.is_string() ? value.get<std::string>() : value.dump()) << '\n';
  }
}

/// Keys are not written over: the secret in them would be gone.
scenario::Problems refuse_overwriting(const std::string& file) {
  return std::filesystem::exists(file)
             ? seal::problem(file, "a file that is already there", "a new name; keys are never written over")
             : scenario::Problems{};
}

/// Locks with the passphrase of the file, or with one that is drawn and told.
int lock_new(const seal::InstructorKeys& keys, const Keys& asked, std::ostream& out, std::ostream& err) {
  const bool drawn = asked.passphrase_file.empty();
  auto words = drawn ? seal::draw_letters(seal::own_letters) : ask_passphrase(asked.passphrase_file, "Your");
  if (!words) {
    return tell(words.error(), err);
  }
  if (std::string why = seal::refuse_passphrase(*words); !why.empty()) {
    return tell(seal::problem(asked.passphrase_file, why,
                              "20 characters or more with ten different ones, or leave it out and have one "
                              "drawn"),
                err);
  }
  const auto file =
      seal::lock_keys(keys, seal::passphrase_bytes(*words), effort_of(asked.effort), asked.file);
  const auto problems = file ? seal::write_bytes(asked.file, *file, true) : file.error();
  if (!problems.empty()) {
    return tell(problems, err);
  }
  nlohmann::ordered_json facts{
      {"keys of", keys.name},
      {"file", asked.file},
      {"fingerprint", seal::fingerprint(keys.sealing.open_half(), keys.signing.open_half())}};
  if (drawn) {
    facts["passphrase"] = *words;
    facts["bits"] = seal::own_letters * seal::bits_a_letter_drawn;
    facts["next"] = "write the passphrase down now: it is not shown again; then: matula keys backup";
  }
  print(facts, asked.json, out);
  seal::wipe(*words);
  return exit_good;
}

int make_new(const Keys& asked, std::ostream& out, std::ostream& err) {
  if (const auto problems = refuse_overwriting(asked.file); !problems.empty()) {
    return tell(problems, err);
  }
  return lock_new(seal::make_keys(asked.name), asked, out, err);
}

int restore(const Keys& asked, std::ostream& out, std::ostream& err) {
  if (const auto problems = refuse_overwriting(asked.file); !problems.empty()) {
    return tell(problems, err);
  }
  std::string text;
  if (!strict::read_text(asked.paper, text)) {
    return tell(seal::problem(asked.paper, "no readable file", "the backup, typed in"), err);
  }
  const auto keys = seal::read_backup(text, asked.paper);
  seal::wipe(text);
  return keys ? lock_new(*keys, asked, out, err) : tell(keys.error(), err);
}

int show(const Keys& asked, std::ostream& out, std::ostream& err) {
  const auto bytes = seal::read_bytes(asked.file, "an instructor's locked keys");
  const auto card = bytes ? seal::read_card(*bytes, asked.file) : tl::make_unexpected(bytes.error());
  if (!card) {
    return tell(card.error(), err);
  }
  print({{"keys of", card->name},
         {"fingerprint", seal::fingerprint(card->sealing, card->signing)},
         {"passphrase costs",
          fmt::format("{} MiB, {} passes", card->effort.memory_bytes >> 20U, card->effort.passes)}},
        asked.json, out);
  return exit_good;
}

int backup(const Keys& asked, std::ostream& out, std::ostream& err) {
  const auto keys = unlock(asked.file, asked.passphrase_file);
  if (!keys) {
    return tell(keys.error(), err);
  }
  std::string text = seal::print_backup(*keys);
  const auto problems = seal::write_bytes(asked.paper, seal::view_of(text), true);
  seal::wipe(text);
  if (!problems.empty()) {
    return tell(problems, err);
  }
  print({{"backup", asked.paper}, {"next", "print it, put the paper under lock, delete the file"}},
        asked.json, out);
  return exit_good;
}

int device(const Keys& asked, std::ostream& out, std::ostream& err) {
  auto problems = refuse_overwriting(asked.file);
  if (problems.empty() && !seal::is_name(asked.name)) {
    problems =
        seal::problem("--pseudonym", "'" + asked.name + "'", "one to 40 plain letters, digits, '-' and '_'");
  }
  if (!problems.empty()) {
    return tell(problems, err);
  }
  const seal::Device made = seal::make_device(asked.name);
  seal::Bytes bytes = seal::to_file(made);
  const std::string card = asked.name + ".card.toml";
  const auto card_file = std::filesystem::path(asked.file).parent_path() / card;
  problems = seal::write_bytes(asked.file, bytes, true);
  seal::wipe(bytes);
  if (problems.empty()) {
    problems = seal::write_bytes(card_file, seal::view_of(seal::card_of(made)));
  }
  if (!problems.empty()) {
    return tell(problems, err);
  }
  print({{"pseudonym", asked.name},
         {"device key", asked.file},
         {"card", card_file.string()},
         {"next", "keep the device key; give the card to your instructor"}},
        asked.json, out);
  return exit_good;
}

} // namespace

int run_keys(const Keys& asked, std::ostream& out, std::ostream& err) {
  if (asked.action == "new") {
    return make_new(asked, out, err);
  }
  if (asked.action == "show") {
    return show(asked, out, err);
  }
  if (asked.action == "backup") {
    return backup(asked, out, err);
  }
  return asked.action == "restore" ? restore(asked, out, err) : device(asked, out, err);
}

} // namespace matula::command
