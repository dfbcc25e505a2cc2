// Sentences, sections and answers as HTML.
#pragma once

#include "page/html.h"
#include "telling/answers.h"
#include "telling/section.h"

#include <string_view>

namespace keenfall::page {

// Into an element that is open: words with a tone stand in a span of their own.
void add_sentence(Html& html, const telling::Sentence& sentence);

// A heading, what leads to the items, the items.
// heading: "h3" or "h4", of the headings in it.
void add_section(Html& html, const telling::Section& section, std::string_view heading);

// The answers, medium by medium; or why there are none.
void add_answers(Html& html, const telling::Answers& answers, std::string_view heading);

}  // namespace keenfall::page
