#include "engine/export/csv.hpp"

#include <stdexcept>

namespace matula::exports {

namespace {

/// "-12", "0.25": digits, at most one point, and a minus before them.
bool is_number(const std::string& cell) {
  const std::size_t from = cell[0] == '-' ? 1 : 0;
  return cell.size() > from && cell.find_first_not_of("0123456789.", from) == std::string::npos &&
         cell.find('.') == cell.rfind('.') && cell.find_first_of("0123456789") != std::string::npos;
}

std::string safe(const std::string& cell) {
  const bool tempting = !cell.empty() && std::string("=+-@\t\r").find(cell[0]) != std::string::npos;
  return tempting && !is_number(cell) ? "'" + cell : cell;
}

std::string quoted(const std::string& cell) {
  if (cell.find_first_of(",\"\r\n") == std::string::npos) {
    return cell;
  }
  std::string text = "\"";
  for (const char letter : cell) {
    text += letter;
    if (letter == '"') {
      text += '"';
    }
  }
  return text + '"';
}

} // namespace

void Csv::row(const std::vector<std::string>& cells) {
  if (cells.size() != columns_) {
    throw std::invalid_argument("a row of another length than the head");
  }
  for (std::size_t i = 0; i < cells.size(); ++i) {
    text_ += (i == 0 ? "" : ",") + quoted(safe(cells[i]));
  }
  text_ += "\r\n";
}

} // namespace matula::exports
