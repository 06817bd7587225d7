package org.geneticsrules.json;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.geneticsrules.pedigree.Ascertainment;
import org.geneticsrules.pedigree.Ascertainment.AtLeastOne;
import org.geneticsrules.pedigree.Ascertainment.ParentsChosen;
import org.geneticsrules.pedigree.Ascertainment.Probands;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sighting;

/** The shape of how a litter came to be among the records. */
final class AscertainmentShape {

    private static final String COMPLETE = "complete";
    private static final String AT_LEAST_ONE = "atLeastOne";
    private static final String PROBANDS = "probands";
    private static final String PARENTS_CHOSEN = "parentsChosen";
    private static final List<String> BY_A_SIGN = List.of(AT_LEAST_ONE, PROBANDS, PARENTS_CHOSEN);
    private static final String EXPECTED =
            "\"" + COMPLETE + "\", or an object with " + AT_LEAST_ONE + ", " + PROBANDS + " or " + PARENTS_CHOSEN;

    private AscertainmentShape() {}

    /** What is stated; nothing if that is unclear, which is then a problem. */
    static Optional<Ascertainment> read(Part part) {
        if (part.isText()) {
            return part.text().flatMap(word -> word(word, part));
        }
        if (!part.isObject()) {
            part.wrongKind(EXPECTED);
            return Optional.empty();
        }
        Part.Members members = part.members(BY_A_SIGN.toArray(String[]::new));
        if (members.found().size() != 1) {
            part.problems()
                    .add(
                            "unclear-ascertainment",
                            part.pointer(),
                            "the ascertainment states " + members.found().keySet(),
                            "exactly one of " + String.join(", ", BY_A_SIGN));
        }
        Optional<Ascertainment> one = members.optional(AT_LEAST_ONE)
                .flatMap(stated -> sign(stated.members("look", "stage", "light")))
                .map(AtLeastOne::new);
        Optional<Ascertainment> some = members.optional(PROBANDS).flatMap(AscertainmentShape::probands);
        Optional<Ascertainment> chosen = members.optional(PARENTS_CHOSEN)
                .flatMap(stated -> sign(stated.members("look", "stage", "light")))
                .map(ParentsChosen::new);
        return one.or(() -> some).or(() -> chosen);
    }

    private static Optional<Ascertainment> word(String word, Part part) {
        if (word.equals(COMPLETE)) {
            return Optional.of(Ascertainment.complete());
        }
        part.problems()
                .add(Problems.unknown(
                                Stage.SHAPE,
                                "unknown-ascertainment",
                                part.pointer(),
                                "ascertainment",
                                word,
                                List.of(COMPLETE))
                        .expecting(EXPECTED));
        return Optional.empty();
    }

    private static Optional<Ascertainment> probands(Part part) {
        Part.Members members = part.members("look", "stage", "light", "chance", "count");
        Optional<Sighting> sign = sign(members);
        Optional<Probability> chance = members.required("chance")
                .flatMap(stated -> ChanceShape.read(stated, "bad-chance").filter(value -> {
                    if (value.isZero()) {
                        stated.problems()
                                .add(
                                        "zero-chance",
                                        stated.pointer(),
                                        "no kit would have been brought to notice",
                                        "a chance above 0");
                    }
                    return !value.isZero();
                }));
        OptionalInt count = members.optional("count")
                .flatMap(Part::count)
                .map(OptionalInt::of)
                .orElseGet(OptionalInt::empty);
        return sign.flatMap(seen -> chance.map(each -> new Probands(seen, each, count)));
    }

    private static Optional<Sighting> sign(Part.Members members) {
        Optional<Phenotype> look = members.required("look").flatMap(IndividualShape::look);
        LifeStage stage = members.optional("stage").map(IndividualShape::stage).orElse(LifeStage.unstated());
        Optional<String> light = members.optional("light").flatMap(IndividualShape::light);
        return look.map(seen -> new Sighting(stage, seen, light));
    }
}
