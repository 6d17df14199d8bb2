// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace loafwright::web_page {

/// The elements that the rooms' rules tell apart; the rest is `block` or `inside`.
enum class Element : std::uint8_t {
    text,
    inside,
    link,
    br,
    hr,
    heading,
    paragraph,
    item,
    ordered,
    unordered,
    table,
    row,
    cell,
    heading_cell,
    pre,
    article,
    main,
    aside,
    nav,
    header,
    footer,
    form,
    meta,
    title,
    block
};

/// One element or text of a page. All that stands in it follows it: the nodes up to `end`.
struct Node {
    Element element = Element::block;
    std::uint8_t level = 0; // of a heading, 1 to 6
    std::uint32_t end = 0;
    std::uint32_t parent = 0; // the first node is its own parent
    std::string_view text;    // of a text
    const void* source = nullptr;
};

/// A page as a list of its nodes in the order of its text, so that whoever walks it never goes
/// deeper than a loop.
class Tree {
public:
    /// Needs:  `lean` from lean_page, which outlives the tree.
    /// Errors: nothing when the page has more parts than fit into the memory that is set aside.
    static std::optional<Tree> of(const std::string& lean);

    Tree(Tree&& other) noexcept;
    Tree& operator=(Tree&& other) noexcept;
    ~Tree();

    [[nodiscard]] const std::vector<Node>& nodes() const { return nodes_; }
    /// The value of the attribute with its entities made characters; nothing when there is none.
    [[nodiscard]] std::optional<std::string_view> attribute(std::size_t node,
                                                            const char* name) const;
    [[nodiscard]] bool has(std::size_t node, const char* name) const;

private:
    struct Memory;
    Tree();

    std::unique_ptr<Memory> memory_;
    std::vector<Node> nodes_;
};

} // namespace loafwright::web_page
