package org.geneticsrules.json;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.model.Case;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.TraitBuilder;
import org.geneticsrules.trait.Condition;

/** The shapes of trait rules and masks. */
final class RuleShape {

    private RuleShape() {}

    static void trait(Part part, Limits limits, TraitBuilder trait) {
        Part.Members members = part.members("visible", "states", "cases", "otherwise", "evidence");
        boolean visible = members.optional("visible").flatMap(Part::flag).orElse(true);
        if (visible) {
            members.optional("states")
                    .ifPresent(states -> states.problems()
                            .add(
                                    "states-of-visible-trait",
                                    states.pointer(),
                                    "the states of a visible trait stand in the catalogue",
                                    "no states here, or \"visible\": false"));
        } else {
            members.required("states")
                    .ifPresent(states -> trait.inner(states.texts(1).toArray(String[]::new)));
        }
        members.required("cases")
                .ifPresent(cases -> cases.entries("cases", limits.cases())
                        .forEach((id, rule) -> oneCase(id, rule).ifPresent(trait::when)));
        members.optional("otherwise").ifPresent(otherwise -> otherwise(otherwise, trait));
        members.optional("evidence").flatMap(Part::text).ifPresent(trait::evidence);
    }

    private static Optional<Case> oneCase(String id, Part part) {
        Part.Members members = part.members("when", "state", "chance", "progression", "threshold", "evidence");
        Condition when = members.required("when").map(ConditionShape::read).orElse(Condition.always());
        Optional<String> evidence = members.optional("evidence").flatMap(Part::text);
        return CaseShape.read(members).map(gives -> new Case(id, when, gives, evidence));
    }

    /** A state alone, or an object like that of a case, without a condition. */
    private static void otherwise(Part part, TraitBuilder trait) {
        if (part.isText()) {
            part.text().ifPresent(trait::otherwise);
            return;
        }
        Part.Members members = part.members("state", "chance", "progression", "threshold", "evidence");
        Optional<String> evidence = members.optional("evidence").flatMap(Part::text);
        CaseShape.read(members).ifPresent(gives -> trait.otherwise(gives, evidence));
    }

    static Mask mask(String id, Part part) {
        Part.Members members = part.members("when", "covers", "over", "evidence");
        Condition when = members.required("when").map(ConditionShape::read).orElse(Condition.always());
        Map<String, Mask.Cover> covers = new LinkedHashMap<>();
        members.required("covers")
                .ifPresent(stated -> stated.entries().forEach((trait, cover) -> covers.put(trait, cover(cover))));
        Set<String> over =
                members.optional("over").map(list -> list.distinctTexts(0)).orElse(new LinkedHashSet<>());
        return new Mask(id, when, covers, over, members.optional("evidence").flatMap(Part::text));
    }

    private static Mask.Cover cover(Part part) {
        if (part.isText()) {
            return Mask.Cover.with(part.text().orElse(""));
        }
        Map<String, String> changes = new LinkedHashMap<>();
        part.entries().forEach((own, shown) -> shown.text().ifPresent(state -> changes.put(own, state)));
        return Mask.Cover.changing(changes);
    }
}
