#include "engine/seal/base32.hpp"
#include "engine/seal/keys.hpp"
#include "engine/seal/names.hpp"

#include <sstream>

namespace matula::seal {

namespace {

constexpr std::size_t rows = 4;
constexpr std::size_t letters_a_row = 13; ///< 4 x 13 letters hold 32 bytes and four bits.
constexpr std::size_t row_check = 3;
constexpr std::size_t master_size = 32;
const std::string name_mark = "keys of: ";

std::string row_mark(std::size_t row) {
  return "row " + std::to_string(row + 1) + ": ";
}

/// The number is part of the check, so that rows cannot change places.
std::string row_letters(std::size_t row, std::string_view letters) {
  return with_check(std::to_string(row + 1) + std::string(letters), row_check).substr(1);
}

Maybe<std::string> read_row(std::string_view words, std::size_t row, int line, const std::string& file) {
  const std::string letters = tidy(words);
  const auto body = without_check(std::to_string(row + 1) + letters, row_check);
  if (letters.size() != letters_a_row + row_check || !body) {
    return tl::make_unexpected(scenario::Problems{
        {file, line, 0, std::string(words), "a row that is not written as it was printed",
         "sixteen letters and digits in four groups, as on the paper; look at every letter again"}});
  }
  return body->substr(1);
}

} // namespace

std::string print_backup(const InstructorKeys& keys) {
  std::string letters = base32(keys.master.view());
  std::string text = "Matula: printed backup of an instructor's keys\n\n" + name_mark + keys.name + "\n";
  for (std::size_t row = 0; row < rows; ++row) {
    text +=
        row_mark(row) +
        in_groups(row_letters(row, std::string_view(letters).substr(row * letters_a_row, letters_a_row))) +
        "\n";
  }
  wipe(letters);
  return text + "fingerprint: " + fingerprint(keys.sealing.open_half(), keys.signing.open_half()) +
         "\n\nWhoever reads this paper can open every result sealed to these keys, and sign as you do. Keep "
         "it\n"
         "under lock, not beside the computer. To type it in: the letters 0, 1 and 8 do not occur.\n";
}

Maybe<InstructorKeys> read_backup(std::string_view text, const std::string& file) {
  std::string letters;
  std::string name;
  std::size_t row = 0;
  int number = 0;
  std::istringstream in{std::string(text)};
  for (std::string line; std::getline(in, line);) {
    ++number;
    if (line.rfind(name_mark, 0) == 0) {
      name = line.substr(name_mark.size());
    }
    if (row == rows || line.rfind(row_mark(row), 0) != 0) {
      continue;
    }
    const auto read = read_row(std::string_view(line).substr(row_mark(row).size()), row, number, file);
    if (!read) {
      return tl::make_unexpected(read.error());
    }
    letters += *read;
    ++row;
  }
  auto master = from_base32(letters);
  if (row != rows || !master || master->size() != master_size || !is_line(name, 100)) {
    return refuse(file, "a backup with " + std::to_string(row) + " of its four rows",
                  "the lines \"row 1: ...\" to \"row 4: ...\" as they are on the paper");
  }
  Secret secret{View(*master)};
  wipe(*master);
  wipe(letters);
  return keys_from(std::move(secret), name);
}

} // namespace matula::seal
