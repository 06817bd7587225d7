package org.geneticsrules.planning;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import org.geneticsrules.comparison.Candidate;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelBuilder;
import org.geneticsrules.model.Viability;
import org.geneticsrules.pedigree.GenotypeTest;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Clock;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Trait;

/** Small models of one coat: dark, pale or albino. */
final class Pales {

    static final Catalogue TRAITS = Catalogue.builder("coats", "1")
            .trait("coat", "dark", "pale", "albino")
            .trait(Trait.of("bib", "yes", "no").judgeableFrom(LifeStage.atWeek(8)))
            .build();

    private Pales() {}

    private static ModelBuilder model(String id) {
        return Model.builder(id, "1", TRAITS).trait("bib", rule -> rule.otherwise("no"));
    }

    /** An allele d makes pale in double dose; or, dominant, in one; or never. */
    static ModelBuilder one(String id, String dominant, String shown) {
        return model(id)
                .locus(
                        "A",
                        at -> at.alleles("D", "d")
                                .dominant(dominant, dominant.equals("D") ? "d" : "D")
                                .shows("D", "plain")
                                .shows("d", "other"))
                .trait(
                        "coat",
                        rule -> rule.when(Condition.where("A", "other"), shown).otherwise("dark"))
                .population(
                        "even",
                        one -> one.frequency("A", "D", Probability.of(1, 2)).frequency("A", "d", Probability.of(1, 2)));
    }

    static Model recessive() {
        return one("recessive", "D", "pale").build();
    }

    static Model dominant() {
        return one("dominant", "d", "pale").build();
    }

    /** What A carries is never seen. */
    static Model unrelated() {
        return model("unrelated")
                .locus(
                        "A",
                        at -> at.alleles("D", "d")
                                .dominant("D", "d")
                                .shows("D", "plain")
                                .shows("d", "other"))
                .trait("coat", rule -> rule.otherwise("dark"))
                .population(
                        "even",
                        one -> one.frequency("A", "D", Probability.of(1, 2)).frequency("A", "d", Probability.of(1, 2)))
                .build();
    }

    /** Two doses of D are never born. */
    static Model lethal() {
        return model("lethal")
                .locus(
                        "A",
                        at -> at.alleles("D", "d")
                                .shows("D", "two doses")
                                .shows("D/d", "one dose")
                                .shows("d", "none"))
                .trait(
                        "coat",
                        rule -> rule.when(Condition.where("A", "none"), "pale").otherwise("dark"))
                .viability(new Viability(
                        "two doses",
                        "A",
                        Set.of("two doses"),
                        Optional.empty(),
                        Probability.ZERO,
                        Probability.ONE,
                        Optional.empty()))
                .population(
                        "even",
                        one -> one.frequency("A", "D", Probability.of(1, 2)).frequency("A", "d", Probability.of(1, 2)))
                .build();
    }

    /** Pale by either of two loci, linked or not. */
    static Model twoLoci(String id, Optional<Probability> recombination) {
        ModelBuilder builder = model(id)
                .locus(
                        "A",
                        at -> at.alleles("D", "d")
                                .dominant("D", "d")
                                .shows("D", "plain")
                                .shows("d", "other"))
                .locus(
                        "B",
                        at -> at.alleles("E", "e")
                                .dominant("E", "e")
                                .shows("E", "plain")
                                .shows("e", "other"))
                .trait(
                        "coat",
                        rule -> rule.when(Condition.where("A", "plain").and("B", "plain"), "dark")
                                .otherwise("pale"))
                .population(
                        "even",
                        one -> one.frequency("A", "D", Probability.of(1, 2))
                                .frequency("A", "d", Probability.of(1, 2))
                                .frequency("B", "E", Probability.of(1, 2))
                                .frequency("B", "e", Probability.of(1, 2)));
        recombination.ifPresent(r -> builder.group(LinkageGroup.autosomal("g", List.of("A", "B"), List.of(r))));
        return builder.build();
    }

    /** Pale by d in double dose; animals with one dose die before they are looked at. */
    static Model apart(String population, Probability plain) {
        return model("apart")
                .locus(
                        "A",
                        at -> at.alleles("D", "d")
                                .shows("D", "plain")
                                .shows("D/d", "mixed")
                                .shows("d", "other"))
                .trait(
                        "coat",
                        rule -> rule.when(Condition.where("A", "other"), "pale").otherwise("dark"))
                .viability(new Viability(
                        "mixed",
                        "A",
                        Set.of("mixed"),
                        Optional.empty(),
                        Probability.ZERO,
                        Probability.ONE,
                        Optional.empty()))
                .population(population, one -> one.frequency("A", "D", plain).frequency("A", "d", plain.complement()))
                .build();
    }

    /** Only the bib hangs on what A carries, and only after a moult. */
    static Model changing() {
        return Model.builder("changing", "1", TRAITS)
                .locus(
                        "A",
                        at -> at.alleles("D", "d")
                                .dominant("D", "d")
                                .shows("D", "plain")
                                .shows("d", "other"))
                .trait("coat", rule -> rule.otherwise("dark"))
                .trait(
                        "bib",
                        rule -> rule.when(
                                        "grows",
                                        Condition.where("A", "other"),
                                        new CaseState.Progression(
                                                Clock.MOULT,
                                                Distribution.certain("no"),
                                                Map.of("no", Distribution.certain("yes")),
                                                false))
                                .otherwise("no"))
                .population(
                        "even",
                        one -> one.frequency("A", "D", Probability.of(1, 2)).frequency("A", "d", Probability.of(1, 2)))
                .build();
    }

    /** As {@link #recessive}, without a word of bibs. */
    static Model withoutBib() {
        return silent("without bib", TRAITS);
    }

    /** As {@link #withoutBib}, of another catalogue. */
    static Model otherTraits() {
        return silent(
                "of others",
                Catalogue.builder("other coats", "1")
                        .trait("coat", "dark", "pale", "albino")
                        .build());
    }

    private static Model silent(String id, Catalogue traits) {
        return Model.builder(id, "1", traits)
                .locus(
                        "A",
                        at -> at.alleles("D", "d")
                                .dominant("D", "d")
                                .shows("D", "plain")
                                .shows("d", "other"))
                .trait(
                        "coat",
                        rule -> rule.when(Condition.where("A", "other"), "pale").otherwise("dark"))
                .population(
                        "even",
                        one -> one.frequency("A", "D", Probability.of(1, 2)).frequency("A", "d", Probability.of(1, 2)))
                .build();
    }

    /** The recessive allele of a locus on the X. */
    static Model sexLinked() {
        return one("sex-linked", "D", "pale")
                .group(LinkageGroup.single(Transmission.X, "A"))
                .build();
    }

    /** One series C over s over c: dark, pale, albino. A line is pure in what it shows. */
    static Model oneSeries() {
        return model("one series")
                .locus(
                        "C",
                        at -> at.alleles("C", "s", "c")
                                .dominant("C", "s")
                                .dominant("s", "c")
                                .shows("C", "full")
                                .shows("s", "pale")
                                .shows("c", "none"))
                .trait(
                        "coat",
                        rule -> rule.when(Condition.where("C", "pale"), "pale")
                                .when(Condition.where("C", "none"), "albino")
                                .otherwise("dark"))
                .population("pale line", pure("C", Map.of("C", 0, "s", 1, "c", 0)))
                .population("albino line", pure("C", Map.of("C", 0, "s", 0, "c", 1)))
                .build();
    }

    /** Pale by d, albino by c. The albino line hides d in double dose, or has it not. */
    static Model twoSeries(String id, boolean hidden) {
        return model(id)
                .locus(
                        "C",
                        at -> at.alleles("C", "c")
                                .dominant("C", "c")
                                .shows("C", "full")
                                .shows("c", "none"))
                .locus(
                        "D",
                        at -> at.alleles("D", "d")
                                .dominant("D", "d")
                                .shows("D", "full")
                                .shows("d", "pale"))
                .trait(
                        "coat",
                        rule -> rule.when(Condition.where("C", "none"), "albino")
                                .when(Condition.where("C", "full").and("D", "pale"), "pale")
                                .otherwise("dark"))
                .population("pale line", at -> {
                    pure("C", Map.of("C", 1, "c", 0)).accept(at);
                    pure("D", Map.of("D", 0, "d", 1)).accept(at);
                })
                .population("albino line", at -> {
                    pure("C", Map.of("C", 0, "c", 1)).accept(at);
                    pure("D", Map.of("D", hidden ? 0 : 1, "d", hidden ? 1 : 0)).accept(at);
                })
                .build();
    }

    private static Consumer<ModelBuilder.PopulationBuilder> pure(String locus, Map<String, Integer> carried) {
        return at -> carried.forEach((allele, share) -> at.frequency(locus, allele, Probability.of(share, 1)));
    }

    static Candidate candidate(Model model) {
        return Candidate.of(model);
    }

    static Individual seen(String id, String coat) {
        return Individual.of(id).with(Observation.of(LifeStage.unstated(), Phenotype.of("coat", coat)));
    }

    static Individual tested(String id, Sex sex, String pair) {
        return Individual.of(id, sex).with(new GenotypeTest(Optional.empty(), "A", Set.of(pair), Probability.ZERO));
    }
}
