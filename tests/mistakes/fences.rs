//! The fences around rules, and the word that says what a rule is.

use crate::book::mistakes;

mistakes! {
    closing_fence_deleted [Marked("unclosed-fence")] {
        "02-handling-cylinders-safely.md":
            "```yaml hazard\nid: flame-near" => "‹```yaml hazard›\nid: flame-near",
        "02-handling-cylinders-safely.md":
            "close the cylinder and leave.\"\n```\n" => "close the cylinder and leave.\"\n",
    }
    last_closing_fence_deleted [Marked("unclosed-fence")] {
        "12-what-to-write-down.md": "```yaml policy\n" => "‹```yaml policy›\n",
        "12-what-to-write-down.md": "value: 5 min\n```\n" => "value: 5 min\n",
    }
    opening_fence_deleted [Marked("unclosed-fence"), Follows("unknown-name")] {
        "12-what-to-write-down.md": "```yaml policy\n" => "\n",
        "12-what-to-write-down.md": "value: 5 min\n```\n" => "value: 5 min\n‹```›\n",
    }
    kind_deleted [Marked("unknown-kind")] {
        "02-handling-cylinders-safely.md": "```yaml hazard\nid: flame-near" => "‹```yaml›\nid: flame-near",
        "13-pocket-cards.md": "  - flame-near\n" => "  - flame-near\n",
    }
    kind_misspelled [Marked("unknown-kind")] {
        "05-delivery-devices.md": "```yaml device\nid: tracheostomy-mask" => "```yaml ‹devise›\nid: tracheostomy-mask",
    }
    kind_in_capitals [Marked("unknown-kind")] {
        "05-delivery-devices.md": "```yaml device\nid: tracheostomy-mask" => "```yaml ‹Device›\nid: tracheostomy-mask",
    }
    kind_of_another_trade [Marked("unknown-kind")] {
        "05-delivery-devices.md": "```yaml device\nid: tracheostomy-mask" => "```yaml ‹mask›\nid: tracheostomy-mask",
    }
    yml_for_yaml [Marked("unknown-kind")] {
        "05-delivery-devices.md": "```yaml device\nid: tracheostomy-mask" => "```‹yml› device\nid: tracheostomy-mask",
    }
    yaml_with_a_colon [Marked("unknown-kind")] {
        "05-delivery-devices.md": "```yaml device\nid: tracheostomy-mask" => "```‹yaml:› device\nid: tracheostomy-mask",
    }
    word_after_the_kind [Marked("unknown-kind")] {
        "05-delivery-devices.md": "```yaml device\nid: tracheostomy-mask"
            => "```yaml device ‹tracheostomy-mask›\nid: tracheostomy-mask",
    }
    rule_in_a_list [Marked("nested-rule")] {
        "10-how-long-it-lasts.md":
            "```yaml policy\nid: call-ahead-time\nname: Call for more oxygen\nvalue: 15 min\nnote: \"Minutes left at which the crew asks for another source.\"\n```\n"
            => "- Say so:\n\n  ‹```yaml policy›\n  id: call-ahead-time\n  name: Call for more oxygen\n  value: 15 min\n  note: \"Minutes left at which the crew asks for another source.\"\n  ```\n",
    }
    rule_in_a_quotation [Marked("unclosed-fence"), Follows("unknown-name")] {
        "10-how-long-it-lasts.md":
            "```yaml policy\nid: call-ahead-time\nname: Call for more oxygen\nvalue: 15 min\nnote: \"Minutes left at which the crew asks for another source.\"\n```\n"
            => "> ‹```yaml policy›\n> id: call-ahead-time\n> name: Call for more oxygen\n> value: 15 min\n> ```\n",
    }
    rule_taken_out_with_html [Marked("hidden-rule")] {
        "02-handling-cylinders-safely.md": "```yaml hazard\nid: too-cold" => "<!--\n‹```yaml hazard›\nid: too-cold",
        "02-handling-cylinders-safely.md": "Let this one warm slowly, never with a flame.\"\n```\n"
            => "Let this one warm slowly, never with a flame.\"\n```\n-->\n",
    }
    block_without_a_rule [Marked("empty-block")] {
        "02-handling-cylinders-safely.md": "## Standing\n" => "## Standing\n\n‹```yaml hazard›\n```\n",
    }
    nul_character [Marked("not-text")] {
        "10-how-long-it-lasts.md": "value: 200 psi" => "value: 200‹\u{0}› psi",
    }
}
