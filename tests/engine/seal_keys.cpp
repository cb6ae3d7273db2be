// Keys, passphrases, device keys and cards: what locks opens, and nothing else does.
#include "engine/seal/base32.hpp"
#include "engine/seal/frame.hpp"
#include "engine/seal/names.hpp"
#include "exam_support.hpp"

#include <fstream>
#include <set>

using namespace matula;
using namespace matula::tests;
using Catch::Matchers::Contains;

namespace {

const std::string own_words = seal::draw_letters(seal::own_letters);

seal::Bytes locked() {
  const auto file = seal::lock_keys(instructor(), seal::passphrase_bytes(own_words), tiny, "own.keys");
  REQUIRE(file);
  return *file;
}

seal::Maybe<seal::InstructorKeys> unlocked(const seal::Bytes& file, const std::string& words = own_words) {
  return seal::unlock_keys(file, seal::passphrase_bytes(words), "own.keys");
}

/// Where the effort's two numbers begin in a locked file.
std::size_t effort_at() {
  return 8 + 2 + 4 + 4 + instructor().name.size();
}

void put_u64(seal::Bytes& file, std::size_t at, std::uint64_t value) {
  for (int i = 0; i < 8; ++i) {
    file[at + static_cast<std::size_t>(i)] = static_cast<unsigned char>(value >> (8 * i));
  }
}

} // namespace

TEST_CASE("keys open with their own passphrase, however its letters are typed, and are the same keys") {
  const auto file = locked();
  const auto keys = unlocked(file);
  REQUIRE(keys);
  CHECK(keys->name == instructor().name);
  CHECK(keys->sealing.open_half() == instructor().sealing.open_half());
  CHECK(keys->signing.open_half() == instructor().signing.open_half());
  std::string typed;
  for (const char letter : own_words) {
    typed += letter == '-' ? ' ' : static_cast<char>(std::tolower(letter));
  }
  CHECK(unlocked(file, typed));
  CHECK_THAT(said(unlocked(file, seal::draw_letters(seal::own_letters))), Contains("another passphrase"));
}

TEST_CASE("every single bit of locked keys that is turned over is noticed") {
  const auto file = locked();
  std::size_t noticed = 0;
  std::size_t costly = 0;
  for (std::size_t bit = 0; bit < file.size() * 8; ++bit) {
    auto turned = file;
    turned[bit / 8] ^= static_cast<unsigned char>(1U << (bit % 8));
    // Eleven bits ask for 1 MiB to 1 GiB, which is allowed and only slow; the largest but two of them is
    // tried.
    const auto card = seal::read_card(turned, "own.keys");
    const std::uint64_t memory = card ? card->effort.memory_bytes : 0;
    if (memory >= (1U << 20U) && memory >> 28U == 0) {
      ++costly;
      continue;
    }
    noticed += memory >> 28U > 1 || !unlocked(turned) ? 1 : 0;
  }
  CHECK(costly == 8);
  CHECK(noticed == file.size() * 8 - costly);
}

TEST_CASE("a file cannot ask for more memory or time than there is a limit for") {
  for (const auto& [passes, memory] : std::vector<std::pair<std::uint64_t, std::uint64_t>>{
           {1, 1ULL << 31}, {11, 8192}, {~0ULL, ~0ULL}, {1, ~0ULL}, {0, 8192}, {1, 0}}) {
    auto file = locked();
    put_u64(file, effort_at(), passes);
    put_u64(file, effort_at() + 8, memory);
    CHECK_THAT(said(unlocked(file)), Contains("a passphrase that"));
    CHECK_THAT(said(seal::read_card(file, "own.keys")), Contains("own.keys: "));
  }
}

TEST_CASE("a printed backup gives the keys back, and a slip of the pen is found in its row") {
  const std::string paper = seal::print_backup(instructor());
  const auto back = seal::read_backup(paper, "paper.txt");
  REQUIRE(back);
  CHECK(back->sealing.open_half() == instructor().sealing.open_half());
  CHECK(back->signing.open_half() == instructor().signing.open_half());
  CHECK(back->name == instructor().name);

  const auto row = paper.find("row 3: ") + 7;
  for (std::size_t i = 0; i < 19; ++i) {
    if (paper[row + i] == '-') {
      continue;
    }
    std::string slipped = paper;
    slipped[row + i] = slipped[row + i] == 'A' ? 'B' : 'A';
    const auto refused = seal::read_backup(slipped, "paper.txt");
    REQUIRE_FALSE(refused);
    CHECK(refused.error().front().line == 6);
  }
  CHECK_THAT(said(seal::read_backup("", "paper.txt")), Contains("0 of its four rows"));
  // Rows that changed places.
  std::string swapped = paper;
  const auto first = paper.find("row 1: ") + 7;
  for (std::size_t i = 0; i < 19; ++i) {
    std::swap(swapped[first + i], swapped[row + i]);
  }
  CHECK_FALSE(seal::read_backup(swapped, "paper.txt"));
}

TEST_CASE("drawn passphrases differ, carry a check, and weak ones are refused") {
  std::set<std::string> drawn;
  for (int i = 0; i < 200; ++i) {
    drawn.insert(seal::draw_letters(seal::class_letters));
  }
  CHECK(drawn.size() == 200);
  CHECK(drawn.begin()->size() == 14);
  CHECK(seal::refuse_passphrase(*drawn.begin()).empty());
  CHECK(seal::refuse_drawn(*drawn.begin(), seal::class_letters, "it").empty());
  CHECK_THAT(seal::refuse_drawn("urine1", seal::class_letters, "it"),
             Contains("6 letters and digits, where it has"));
  for (const char* weak :
       {"", "urine1", "password", "1234567890123456789012345", "abcdefghijklmnopqrstuvwxyz",
        "qwertyuiopqwertyuiop", "aaaaaaaaaaaaaaaaaaaaaaaaaaa"}) {
    CHECK_FALSE(seal::refuse_passphrase(weak).empty());
  }
  CHECK(seal::refuse_passphrase("nine blue floats drift past").empty());
  CHECK_THAT(seal::refuse_passphrase("n\xC3\xA4"
                                     "chstes Jahr im Labor wieder"),
             Contains("plain keyboard"));
}

TEST_CASE("a device key is kept, and its card tells only the open half") {
  const auto& device = learner();
  const auto file = seal::to_file(device);
  const auto back = seal::read_device(file, "heron.device");
  REQUIRE(back);
  CHECK(back->pseudonym == "heron-07");
  CHECK(back->signing.open_half() == device.signing.open_half());
  const std::string words = seal::card_of(device);
  const auto card = seal::parse_card(words, "heron.card.toml");
  REQUIRE(card);
  CHECK(card->pseudonym == "heron-07");
  CHECK(card->key == device.signing.open_half());
  CHECK(words.find(seal::base32(device.seed.view())) == std::string::npos);
  for (std::size_t bit = 0; bit < file.size() * 8; ++bit) {
    auto turned = file;
    turned[bit / 8] ^= static_cast<unsigned char>(1U << (bit % 8));
    REQUIRE_FALSE(seal::read_device(turned, "heron.device"));
  }
}

TEST_CASE("a card with a slip, a name with a path in it, and two cards of one learner are refused") {
  std::string words = seal::card_of(learner());
  const auto at = words.find("key = \"") + 9;
  words[at] = words[at] == 'A' ? 'B' : 'A';
  CHECK_THAT(said(seal::parse_card(words, "heron.card.toml")), Contains("every letter"));
  for (const char* name : {"", "../heron", "heron 7", "-heron", "h\xC3\xA9ron", "a/b"}) {
    CHECK_FALSE(seal::is_name(name));
  }
  const auto folder = fresh_folder("cards");
  std::ofstream(folder / "one.toml") << seal::card_of(learner());
  CHECK(seal::read_cards(folder)->size() == 1);
  std::ofstream(folder / "two.toml") << seal::card_of(learner());
  CHECK_THAT(said(seal::read_cards(folder)), Contains("a second card of 'heron-07'"));
  CHECK_THAT(said(seal::read_cards(folder / "nowhere")), Contains("no readable folder"));
  std::filesystem::remove_all(folder);
}

TEST_CASE("files of the wrong kind are told by what they are") {
  const auto pack = sealed(contents());
  CHECK_THAT(said(unlocked(pack)), Contains("an examination pack; an instructor's locked keys"));
  CHECK_THAT(said(unlocked({})), Contains("an empty file"));
  const std::string log = "{\"matula_sitting\": 1}\n";
  CHECK_THAT(said(unlocked({log.begin(), log.end()})), Contains("the log of a sitting, not sealed"));
  CHECK_THAT(said(unlocked({'[', 'a', ']'})), Contains("a text file"));
  CHECK_THAT(said(unlocked({0xFF, 0xFE, 0x00})), Contains("a file of another program, or a damaged one"));
}

TEST_CASE("text is UTF-8 or is refused") {
  CHECK(seal::is_line("Jory Menhenick \xC2\xB5g", 100));
  for (const char* wrong :
       {"\xC3", "\xC0\xAF", "\xED\xA0\x80", "\xF5\x80\x80\x80", "\xE0\x80\x80", "a\tb", "\x7F"}) {
    CHECK_FALSE(seal::is_line(wrong, 100));
  }
  CHECK_FALSE(seal::is_line("too long", 3));
  CHECK(seal::is_text("a\n\tb\r\n"));
}
