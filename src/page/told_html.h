// Sentences, sections and answers as HTML.
#pragma once

#include "page/html.h"
#include "telling/answers.h"
#include "telling/section.h"

namespace keenfall::page {

// Into an element that is open: words with a tone stand in a span of their own.
void add_sentence(Html& html, const telling::Sentence& sentence);

// A heading of level 3, what leads to the items, the items.
void add_section(Html& html, const telling::Section& section);

// The answers, medium by medium; or why there are none.
void add_answers(Html& html, const telling::Answers& answers);

}  // namespace keenfall::page
