#include "engine/examination/chain.hpp"
#include "engine/seal/names.hpp"
#include "engine/sitting/json_lines.hpp"

#include <algorithm>

namespace matula::examination {

namespace {

using nlohmann::json;
using sitting::Wrong;

constexpr int chain_format = 1;
const std::vector<std::string> reasons{"begun", "counted", "resumed", "handed in"};

/// Takes fields out of a line; whole numbers as digits only, bytes in small hexadecimal letters.
class Fields {
public:
  Fields(const json& object, std::vector<Wrong>& wrongs) : object_(object), wrongs_(wrongs) {}

  std::string word(const char* key) {
    const auto at = object_.find(key);
    if (at == object_.end() || !at->is_string() || !seal::is_line(at->get_ref<const std::string&>(), most_)) {
      wrong(key, "words in \"quotes\"");
      return "";
    }
    return at->get<std::string>();
  }
  std::uint64_t number(const char* key) {
    const auto at = object_.find(key);
    if (at == object_.end() || !at->is_number_unsigned()) {
      wrong(key, "a whole number");
      return 0;
    }
    return at->get<std::uint64_t>();
  }
  template <std::size_t size> std::array<unsigned char, size> bytes(const char* key) {
    std::array<unsigned char, size> array{};
    const seal::Bytes read = seal::from_hex(word(key), size);
    if (read.size() == size) {
      std::copy(read.begin(), read.end(), array.begin());
    } else {
      wrong(key, std::to_string(2 * size) + " small hexadecimal letters");
    }
    return array;
  }

private:
  void wrong(const char* key, const std::string& wanted) {
    wrongs_.push_back({"no proper \"" + std::string(key) + "\"", "\"" + std::string(key) + "\": " + wanted});
  }
  static constexpr std::size_t most_ = 400;
  const json& object_;
  std::vector<Wrong>& wrongs_;
};

ChainStart read_start(const json& object, std::vector<Wrong>& wrongs) {
  Fields in(object, wrongs);
  if (in.number("matula_chain") != chain_format) {
    wrongs.push_back({"a chain of another version", "\"matula_chain\": 1"});
  }
  ChainStart start;
  start.pack = in.bytes<sizeof(seal::Hash)>("pack");
  start.nonce = in.word("nonce");
  start.pseudonym = in.word("pseudonym");
  start.label = in.word("case");
  start.device = in.bytes<sizeof(seal::Key)>("device");
  start.program = in.word("program");
  start.seed = in.number("seed");
  return start;
}

Checkpoint read_checkpoint(const json& object, std::vector<Wrong>& wrongs) {
  Fields in(object, wrongs);
  Checkpoint one;
  one.records = in.number("records");
  one.hash = in.bytes<sizeof(seal::Hash)>("hash");
  one.at_s = static_cast<std::int64_t>(in.number("at"));
  one.why = in.word("why");
  one.signature = in.bytes<sizeof(seal::Signature)>("signature");
  if (std::find(reasons.begin(), reasons.end(), one.why) == reasons.end()) {
    wrongs.push_back({"a checkpoint for no known reason", "\"begun\", \"counted\", \"resumed\" or "
                                                          "\"handed in\""});
  }
  return one;
}

std::string dumped(const nlohmann::ordered_json& object) {
  return object.dump(-1, ' ', false, nlohmann::ordered_json::error_handler_t::replace);
}

} // namespace

std::string to_line(const ChainStart& start) {
  return dumped({{"matula_chain", chain_format},
                 {"pack", seal::hex(start.pack)},
                 {"nonce", start.nonce},
                 {"pseudonym", start.pseudonym},
                 {"case", start.label},
                 {"device", seal::hex(start.device)},
                 {"program", start.program},
                 {"seed", start.seed}});
}

std::string to_line(const Checkpoint& checkpoint) {
  return dumped({{"records", checkpoint.records},
                 {"hash", seal::hex(checkpoint.hash)},
                 {"at", static_cast<std::uint64_t>(checkpoint.at_s)},
                 {"why", checkpoint.why},
                 {"signature", seal::hex(checkpoint.signature)}});
}

seal::Maybe<Chain> parse_chain(std::string_view text, const std::string& name) {
  Chain chain;
  scenario::Problems problems;
  sitting::LineProblems at_line(name, problems);
  int number = 0;
  for (const std::string_view line : whole_lines(text)) {
    std::vector<Wrong> wrongs;
    chain.good_bytes += line.size() + 1;
    if (const auto object = sitting::parse_object(line, wrongs); !object) {
      ++number;
    } else if (++number == 1) {
      chain.start = read_start(*object, wrongs);
    } else {
      chain.checkpoints.push_back(read_checkpoint(*object, wrongs));
    }
    const std::string shown = seal::is_text(line) ? std::string(line) : std::string();
    at_line.add(number, shown, wrongs);
  }
  if (number == 0) {
    at_line.add(1, "", {{"no whole first line", "a chain's first line: {\"matula_chain\": 1, ...}"}});
  }
  if (!problems.empty()) {
    return tl::make_unexpected(std::move(problems));
  }
  return chain;
}

} // namespace matula::examination
