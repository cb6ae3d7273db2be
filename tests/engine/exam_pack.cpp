// Packs: what was sealed comes out, on each side its own half; what was changed, cut or made up does not.
#include "engine/examination/seat.hpp"
#include "engine/seal/base32.hpp"
#include "exam_support.hpp"

using namespace matula;
using namespace matula::tests;
using Catch::Matchers::Contains;

namespace {

seal::Maybe<examination::Pack> read(const seal::Bytes& file) {
  return examination::read_pack(file, "spring.pack");
}

void put_number(seal::Bytes& file, std::size_t at, std::uint64_t value, std::size_t size) {
  for (std::size_t i = 0; i < size; ++i) {
    file[at + i] = static_cast<unsigned char>(value >> (8 * i));
  }
}

/// Where the header's last fields begin: two section sizes of eight bytes each.
std::size_t sizes_at(const examination::Pack& pack) {
  return pack.head_bytes - 16;
}
/// Two efforts, salt, commitment and two keys stand before the sizes.
std::size_t effort_at(const examination::Pack& pack) {
  return sizes_at(pack) - 64 - 32 - 16 - 16;
}

} // namespace

TEST_CASE("a pack opens to its bench halves with the passphrase and to everything with the keys") {
  const auto made = contents();
  const auto pack = opened(sealed(made));
  CHECK(pack.head.title == "Spring practical");
  CHECK(pack.head.minutes == 90);
  const auto bench = examination::open_bench(pack, class_passphrase());
  REQUIRE(bench);
  REQUIRE(bench->students.size() == 2);
  CHECK(bench->students[1].cases[0].text == made.bench[1].cases[0].text);
  CHECK(bench->students[0].cases[0].key.empty());
  const auto key = examination::open_key(pack, instructor());
  REQUIRE(key);
  CHECK(key->nonce == made.nonce);
  CHECK(key->students[1].cases[0].text == made.key[1].cases[0].text);
  CHECK(key->students[1].cases[0].key == "swollen_ankles");
}

TEST_CASE("neither another passphrase nor other keys open it") {
  const auto pack = opened(sealed(contents()));
  const seal::Secret wrong = seal::passphrase_bytes(seal::draw_letters(seal::class_letters));
  CHECK_THAT(said(examination::open_bench(pack, wrong)), Contains("another passphrase"));
  CHECK_THAT(said(examination::open_key(pack, seal::make_keys("B"))), Contains("other keys have sealed"));
}

TEST_CASE("nothing of the answers can be read in the file or in the bench section") {
  const auto made = contents(with(good_scenario(), "why = \"Because.\"", "why = \"Cloud stays with acid.\""));
  const auto file = sealed(made);
  const std::string bytes = seal::text_of(file);
  const auto bench = examination::open_bench(opened(file), class_passphrase());
  REQUIRE(bench);
  const std::string half = bench->students[0].cases[0].text;
  for (const char* secret : {"Cloud stays with acid", "swollen_ankles", "albumin", "150 mg/dL"}) {
    CHECK(bytes.find(secret) == std::string::npos);
  }
  for (const char* secret : {"Cloud stays with acid", "swollen_ankles", "debrief", "right"}) {
    CHECK(half.find(secret) == std::string::npos);
  }
  CHECK_THAT(half, Contains("albumin")); // The bench has to know: said in docs/examinations.md.
}

TEST_CASE("every single bit of a pack that is turned over is noticed before anything is opened") {
  auto small = contents();
  small.bench.pop_back();
  small.key.pop_back();
  const auto file = sealed(small);
  std::size_t noticed = 0;
  for (std::size_t bit = 0; bit < file.size() * 8; ++bit) {
    auto turned = file;
    turned[bit / 8] ^= static_cast<unsigned char>(1U << (bit % 8));
    noticed += read(turned) ? 0 : 1;
  }
  CHECK(noticed == file.size() * 8);
}

TEST_CASE("a pack cut off anywhere, or with something behind it, is refused") {
  const auto file = sealed(contents());
  for (std::size_t size = 0; size < file.size(); size += size < 400 ? 1 : 37) {
    const auto cut = read({file.begin(), file.begin() + static_cast<std::ptrdiff_t>(size)});
    REQUIRE_FALSE(cut);
  }
  auto longer = file;
  longer.push_back(0);
  CHECK_THAT(said(read(longer)), Contains("whose header asks for"));
}

TEST_CASE("sizes and efforts out of all proportion are refused before anything is set aside") {
  const auto file = sealed(contents());
  const auto pack = opened(file);
  for (const std::uint64_t size : {1ULL << 27U, 1ULL << 40U, ~0ULL, ~0ULL - 200}) {
    auto turned = file;
    put_number(turned, sizes_at(pack), size, 8);
    CHECK_THAT(said(read(turned)), Contains("sections said to be"));
    turned = file;
    put_number(turned, sizes_at(pack) + 8, size + (1ULL << 28U), 8);
    CHECK_FALSE(read(turned));
  }
  auto costly = file;
  put_number(costly, effort_at(pack) + 8, 1ULL << 40U, 8);
  CHECK_THAT(said(read(costly)), Contains("MiB of memory"));
  costly = file;
  put_number(costly, effort_at(pack), 1000, 8);
  CHECK_THAT(said(read(costly)), Contains("1000 passes"));
  auto header = file;
  put_number(header, 10, 0xFFFFFFFF, 4);
  CHECK_THAT(said(read(header)), Contains("a header said to be 4294967295 bytes long"));
}

TEST_CASE("another version and another kind of file are named") {
  auto file = sealed(contents());
  put_number(file, 8, 2, 2);
  CHECK_THAT(said(read(file)), Contains("in version 2"));
  const std::string scenario = good_scenario();
  CHECK_THAT(said(read({scenario.begin(), scenario.end()})), Contains("a text file; an examination pack"));
  CHECK_THAT(said(read(seal::to_file(learner()))), Contains("a learner's device key"));
  CHECK_THAT(said(read({})), Contains("an empty file"));
}

TEST_CASE("a section lent from another pack is noticed even when it is signed anew") {
  // The instructor's own keys sign a pack whose bench section comes from another one under the same
  // passphrase.
  const auto one = opened(sealed(contents()));
  const auto other = opened(sealed(contents()));
  REQUIRE(one.file.size() == other.file.size());
  seal::Bytes mixed = one.file;
  const auto at = one.head_bytes + one.wrapped_key().size();
  std::copy(other.bench().begin(), other.bench().end(), mixed.begin() + static_cast<std::ptrdiff_t>(at));
  CHECK_FALSE(read(mixed));
  seal::ByteWriter words;
  const seal::View all(mixed);
  for (const auto part :
       {all.first(one.head_bytes), one.wrapped_key(), all.subspan(at, one.bench().size()), one.key()}) {
    words.raw(seal::hash({part}));
  }
  const auto signature = instructor().signing.sign(seal::Signed::Pack, words.bytes());
  std::copy(signature.begin(), signature.end(), mixed.end() - 64);
  const auto pack = read(mixed);
  REQUIRE(pack);
  CHECK_THAT(said(examination::open_bench(*pack, class_passphrase())), Contains("does not open"));
  CHECK(examination::fingerprint(*pack) != examination::fingerprint(one));
}

TEST_CASE("a seat is taken with the right pseudonym, case and session code only") {
  const auto made = contents();
  const auto pack = opened(sealed(made));
  const auto bench = examination::open_bench(pack, class_passphrase());
  REQUIRE(bench);
  const auto seat = examination::take_seat(pack, *bench, "heron-07", "unknown-1", made.nonce);
  REQUIRE(seat);
  CHECK(seat->bench == made.bench[0].cases[0].text);
  CHECK_THAT(said(examination::take_seat(pack, *bench, "heron-70", "unknown-1", made.nonce)),
             Contains("heron-07"));
  CHECK_THAT(said(examination::take_seat(pack, *bench, "heron-07", "unknown-2", made.nonce)),
             Contains("no case 'unknown-2'"));
  std::string slip = made.nonce;
  slip[0] = slip[0] == 'A' ? 'B' : 'A';
  CHECK_THAT(said(examination::take_seat(pack, *bench, "heron-07", "unknown-1", slip)),
             Contains("at least one is wrong"));
}

TEST_CASE("what cannot be packed is refused in words") {
  auto made = contents();
  made.title = "";
  CHECK_FALSE(examination::seal_pack(made, instructor(), class_passphrase(), tiny, "p"));
  made = contents();
  made.delete_after = "soon";
  CHECK_THAT(said(examination::seal_pack(made, instructor(), class_passphrase(), tiny, "p")),
             Contains("deletion date"));
  made = contents();
  made.bench[0].cases[0].text = "not UTF-8 \xFF";
  CHECK_THAT(said(examination::seal_pack(made, instructor(), class_passphrase(), tiny, "p")),
             Contains("not UTF-8"));
  made = contents();
  made.bench[1].pseudonym = made.bench[0].pseudonym;
  CHECK_FALSE(examination::seal_pack(made, instructor(), class_passphrase(), tiny, "p"));
}
