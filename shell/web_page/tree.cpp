// SPDX-License-Identifier: Apache-2.0
#include "shell/web_page/tree.hpp"

#include <gumbo.h>

#include <algorithm>
#include <csetjmp>
#include <cstddef>
#include <new>
#include <utility>

namespace loafwright::web_page {
namespace {

// Gumbo takes about 400 bytes for an element and its text; long pages have some ten thousand.
constexpr std::size_t most_bytes = std::size_t{64} << 20U;
constexpr std::size_t smallest_chunk = std::size_t{16} << 10U;
constexpr std::size_t largest_chunk = std::size_t{4} << 20U;

Element element_of(const GumboElement& element) {
    switch (element.tag) {
    case GUMBO_TAG_SPAN:
        return gumbo_get_attribute(&element.attributes, "href") != nullptr ? Element::link
                                                                           : Element::inside;
    case GUMBO_TAG_BR:
        return Element::br;
    case GUMBO_TAG_HR:
        return Element::hr;
    case GUMBO_TAG_H1:
    case GUMBO_TAG_H2:
    case GUMBO_TAG_H3:
    case GUMBO_TAG_H4:
    case GUMBO_TAG_H5:
    case GUMBO_TAG_H6:
        return Element::heading;
    case GUMBO_TAG_P:
        return Element::paragraph;
    case GUMBO_TAG_LI:
        return Element::item;
    case GUMBO_TAG_OL:
        return Element::ordered;
    case GUMBO_TAG_UL:
    case GUMBO_TAG_MENU:
    case GUMBO_TAG_DIR:
        return Element::unordered;
    case GUMBO_TAG_TABLE:
        return Element::table;
    case GUMBO_TAG_TR:
        return Element::row;
    case GUMBO_TAG_TD:
        return Element::cell;
    case GUMBO_TAG_TH:
        return Element::heading_cell;
    case GUMBO_TAG_PRE:
        return Element::pre;
    case GUMBO_TAG_ARTICLE:
        return Element::article;
    case GUMBO_TAG_MAIN:
        return Element::main;
    case GUMBO_TAG_ASIDE:
        return Element::aside;
    case GUMBO_TAG_NAV:
        return Element::nav;
    case GUMBO_TAG_HEADER:
        return Element::header;
    case GUMBO_TAG_FOOTER:
        return Element::footer;
    case GUMBO_TAG_FORM:
        return Element::form;
    case GUMBO_TAG_META:
        return Element::meta;
    case GUMBO_TAG_TITLE:
        return Element::title;
    default:
        return Element::block;
    }
}

bool is_element(const GumboNode& node) {
    return node.type == GUMBO_NODE_ELEMENT || node.type == GUMBO_NODE_TEMPLATE;
}

const GumboNode& gumbo(const Node& node) {
    return *static_cast<const GumboNode*>(node.source);
}

} // namespace

/// All memory of one parse, given back at once. Gumbo's own way of giving back calls itself for
/// each level of the page.
struct Tree::Memory {
    std::vector<std::unique_ptr<std::byte[]>> chunks;
    std::size_t left = 0;
    std::size_t taken = 0;
    std::byte* free = nullptr;
    std::jmp_buf too_much{};

    // Room for all, so that nothing here throws into Gumbo.
    Memory() { chunks.reserve(2 * most_bytes / largest_chunk); }

    void* take(std::size_t bytes) {
        constexpr std::size_t grain = alignof(std::max_align_t);
        bytes = (bytes + grain - 1) / grain * grain;
        if (bytes > left) {
            const std::size_t size =
                std::max(bytes, std::clamp(taken, smallest_chunk, largest_chunk));
            if (taken + size > most_bytes) {
                return nullptr;
            }
            std::unique_ptr<std::byte[]> chunk(new (std::nothrow) std::byte[size]);
            if (chunk == nullptr || chunks.size() == chunks.capacity()) {
                return nullptr;
            }
            free = chunk.get();
            chunks.push_back(std::move(chunk));
            left = size;
            taken += size;
        }
        void* const given = free;
        free += bytes;
        left -= bytes;
        return given;
    }

    static void* allocate(void* memory, std::size_t bytes) {
        auto& self = *static_cast<Memory*>(memory);
        void* const given = self.take(bytes);
        if (given == nullptr) {
            // Gumbo minds no failure. Between here and parse() stand frames of C alone.
            std::longjmp(self.too_much, 1);
        }
        return given;
    }

    static void release(void* /*memory*/, void* /*bytes*/) {}

    // A function of its own, so that no local of C++ lives across the jump.
    const GumboNode* parse(const std::string& lean) {
        GumboOptions options = kGumboDefaultOptions;
        options.allocator = allocate;
        options.deallocator = release;
        options.userdata = this;
        options.max_errors = 0;
        if (setjmp(too_much) != 0) {
            return nullptr;
        }
        return gumbo_parse_with_options(&options, lean.data(), lean.size())->root;
    }
};

Tree::Tree() : memory_(std::make_unique<Memory>()) {}
Tree::Tree(Tree&& other) noexcept = default;
Tree& Tree::operator=(Tree&& other) noexcept = default;
Tree::~Tree() = default;

std::optional<Tree> Tree::of(const std::string& lean) {
    Tree tree;
    const GumboNode* const root = tree.memory_->parse(lean);
    if (root == nullptr) {
        return std::nullopt;
    }
    struct Level {
        const GumboNode* node;
        std::uint32_t at;
        unsigned next_child;
    };
    std::vector<Node>& nodes = tree.nodes_;
    std::vector<Level> open;
    const auto enter = [&](const GumboNode* node) {
        Node made;
        made.source = node;
        made.element = element_of(node->v.element);
        if (made.element == Element::heading) {
            made.level = static_cast<std::uint8_t>(node->v.element.tag - GUMBO_TAG_H1 + 1);
        }
        made.parent = open.empty() ? 0 : open.back().at;
        open.push_back({node, static_cast<std::uint32_t>(nodes.size()), 0});
        nodes.push_back(made);
    };
    enter(root);
    while (!open.empty()) {
        Level& level = open.back();
        const GumboVector& children = level.node->v.element.children;
        if (level.next_child >= children.length) {
            nodes[level.at].end = static_cast<std::uint32_t>(nodes.size());
            open.pop_back();
            continue;
        }
        const auto* const child = static_cast<const GumboNode*>(children.data[level.next_child++]);
        if (is_element(*child)) {
            enter(child);
        } else if (child->type != GUMBO_NODE_COMMENT) {
            Node made;
            made.source = child;
            made.element = Element::text;
            made.text = child->v.text.text;
            made.parent = level.at;
            made.end = static_cast<std::uint32_t>(nodes.size() + 1);
            nodes.push_back(made);
        }
    }
    return tree;
}

std::optional<std::string_view> Tree::attribute(std::size_t node, const char* name) const {
    const GumboNode& source = gumbo(nodes_[node]);
    if (!is_element(source)) {
        return std::nullopt;
    }
    const GumboAttribute* const found = gumbo_get_attribute(&source.v.element.attributes, name);
    return found == nullptr ? std::nullopt : std::optional<std::string_view>(found->value);
}

bool Tree::has(std::size_t node, const char* name) const {
    return attribute(node, name).has_value();
}

} // namespace loafwright::web_page
