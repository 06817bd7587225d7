package org.geneticsrules.json;

import java.util.Optional;
import java.util.Set;
import org.geneticsrules.model.Viability;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Sex;

/** The shape of a statement of viability, which states at least one of its two steps. */
final class ViabilityShape {

    private ViabilityShape() {}

    static Viability read(String id, Part part) {
        Part.Members members = part.members("locus", "expressions", "sex", "birth", "scored", "evidence");
        Optional<Part> birth = members.optional("birth");
        Optional<Part> scored = members.optional("scored");
        if (birth.isEmpty() && scored.isEmpty()) {
            members.required("birth");
        }
        return new Viability(
                id,
                members.required("locus").flatMap(Part::text).orElse(""),
                members.required("expressions")
                        .map(list -> list.distinctTexts(1))
                        .orElse(Set.of()),
                members.optional("sex").flatMap(word -> word.word("sex", Sex::of, Sex.words())),
                chance(birth),
                chance(scored),
                members.optional("evidence").flatMap(Part::text));
    }

    private static Probability chance(Optional<Part> part) {
        return part.flatMap(stated -> ChanceShape.read(stated, "bad-chance")).orElse(Probability.ONE);
    }
}
