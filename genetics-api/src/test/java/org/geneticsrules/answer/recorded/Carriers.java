package org.geneticsrules.answer.recorded;

import java.util.ArrayList;
import java.util.List;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.HiddenAllele;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.PedigreeBuilder;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;

/** A recessive albino, and a recessive on the X, with families whose carrier chances can be calculated by hand. */
final class Carriers {

    static final Model MODEL = Model.builder(
                    "carriers",
                    "1",
                    Catalogue.builder("carriers.traits", "1")
                            .trait("eye", "dark", "pink")
                            .trait("gait", "firm", "swaying")
                            .build())
            .locus(
                    "C",
                    locus -> locus.alleles("C", "c")
                            .dominant("C", "c")
                            .shows("C", "pigment")
                            .shows("c", "albino"))
            .locus(
                    "X",
                    locus -> locus.alleles("X", "x")
                            .dominant("X", "x")
                            .shows("X", "sound")
                            .shows("x", "unsound"))
            .group(LinkageGroup.single(Transmission.X, "X"))
            .trait(
                    "eye",
                    rule -> rule.when(Condition.where("C", "albino"), "pink").otherwise("dark"))
            .trait(
                    "gait",
                    rule -> rule.when(Condition.where("X", "unsound"), "swaying")
                            .otherwise("firm"))
            .population(
                    "rare",
                    population -> population
                            .frequency("C", "C", Probability.of(49, 50))
                            .frequency("C", "c", Probability.of(1, 50))
                            .frequency("X", "X", Probability.of(49, 50))
                            .frequency("X", "x", Probability.of(1, 50)))
            .build();

    static final Answers ANSWERS = Answers.of(CompiledModel.of(MODEL), List.of());
    static final HiddenAllele ALBINO = HiddenAllele.find(MODEL, "c");
    static final Observation DARK = seen("eye", "dark");
    static final Observation PINK = seen("eye", "pink");

    private Carriers() {}

    static Observation seen(String trait, String state) {
        return Observation.of(LifeStage.unstated(), Phenotype.of(trait, state));
    }

    static Individual female(String id, Observation... seen) {
        return with(Individual.of(id, Sex.FEMALE), seen);
    }

    static Individual male(String id, Observation... seen) {
        return with(Individual.of(id, Sex.MALE), seen);
    }

    private static Individual with(Individual one, Observation... seen) {
        Individual all = one;
        for (Observation look : seen) {
            all = all.with(look);
        }
        return all;
    }

    /** Dark parents with an albino and a dark daughter named so: of her it is known that she carries albino with a chance of 2/3. */
    static PedigreeBuilder sister(PedigreeBuilder builder, String sister, Sex sex) {
        return builder.add(female("dam of " + sister, DARK))
                .add(male("sire of " + sister, DARK))
                .add(male("albino sib of " + sister, PINK))
                .add(with(Individual.of(sister, sex), DARK))
                .add(Litter.of(
                        "litter of " + sister,
                        "dam of " + sister,
                        "sire of " + sister,
                        "albino sib of " + sister,
                        sister));
    }

    static PedigreeBuilder kits(PedigreeBuilder builder, String dam, String sire, int count, Observation look) {
        List<String> ids = new ArrayList<>();
        for (int k = 0; k < count; k++) {
            ids.add("kit " + k);
            builder.add(Individual.of("kit " + k).with(look));
        }
        return builder.add(Litter.of("the kits", dam, sire, ids.toArray(String[]::new)));
    }
}
