package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import java.util.List;
import org.geneticsrules.comparison.Candidate;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;

/** An albino that hides the very allele a mating was to tell of. */
final class HiddenPale {

    private HiddenPale() {}

    /**
     * Runs the sample.
     *
     * @param out where to print
     * @return what it is about
     */
    static Shown run(PrintStream out) {
        // Laid out by hand, one record per line.
        // spotless:off
        // sample
        // Invented: pale by white, two of their young together, and two whites.
        String book = """
                id,count,sex,litter,dam,sire,ascertainment,trait: coat
                Hazel,,female,,,,,pale
                Snow,,male,,,,,white
                Moss,,male,spring,Hazel,Snow,complete,pale
                Reed,,female,spring,Hazel,Snow,,pale
                ,1,,spring,Hazel,Snow,,pale
                ,6,,summer,Reed,Moss,complete,pale
                ,2,,summer,,,,white
                Frost,,female,,,,,white
                ,5,,whites,Frost,Snow,complete,white
                """;
        Pedigree litters = LitterVerdicts.records(book);
        for (String founders : List.of("pale stock", "mixed stock")) {
            out.println("-- founders of " + founders + ":");
            LitterVerdicts.ratios(out, LitterVerdicts.compare(List.of(oneSeries(), twoLoci()), litters, founders));
        }
        LitterVerdicts.verdict(out, List.of(oneSeries(), twoLoci()), litters, "pale stock");
        out.println("-- and three more kits of Hazel and Snow, one of them dark:");
        Pedigree dark = LitterVerdicts.records(book
                + ",1,,autumn,Hazel,Snow,complete,dark\n"
                + ",2,,autumn,Hazel,Snow,,pale\n");
        LitterVerdicts.verdict(out, List.of(oneSeries(), twoLoci()), dark, "mixed stock");
        // end
        // spotless:on
        return Shown.of(twoLoci().model());
    }

    private static final Catalogue TRAITS = Catalogue.builder("sample.hidden-pale.traits", "1.0.0")
            .trait("coat", "dark", "pale", "white")
            .build();

    private static Candidate oneSeries() {
        return Candidate.of(Model.builder("sample.one-series", "1.0.0", TRAITS)
                        .title("one series")
                        .locus(
                                "C",
                                c -> c.alleles("C", "d", "c")
                                        .dominant("C", "d")
                                        .dominant("d", "c")
                                        .shows("C", "dark")
                                        .shows("d", "pale")
                                        .shows("c", "albino"))
                        .trait(
                                "coat",
                                coat -> coat.when(Condition.where("C", "dark"), "dark")
                                        .when(Condition.where("C", "pale"), "pale")
                                        .otherwise("white"))
                        .population(
                                "pale stock",
                                founders -> founders.frequency("C", "C", Probability.ZERO)
                                        .frequency("C", "d", Probability.of(4, 5))
                                        .frequency("C", "c", Probability.of(1, 5)))
                        .population(
                                "mixed stock",
                                founders -> founders.frequency("C", "C", Probability.of(7, 10))
                                        .frequency("C", "d", Probability.of(1, 10))
                                        .frequency("C", "c", Probability.of(1, 5)))
                        .build())
                .called("one series");
    }

    private static Candidate twoLoci() {
        return Candidate.of(Model.builder("sample.two-loci", "1.0.0", TRAITS)
                        .title("two loci")
                        .locus(
                                "C",
                                c -> c.alleles("C", "c")
                                        .dominant("C", "c")
                                        .shows("C", "pigment")
                                        .shows("c", "albino"))
                        .locus(
                                "D",
                                d -> d.alleles("D", "d")
                                        .dominant("D", "d")
                                        .shows("D", "dark")
                                        .shows("d", "pale"))
                        .trait(
                                "coat",
                                coat -> coat.when(Condition.where("D", "dark"), "dark")
                                        .otherwise("pale"))
                        .mask(Mask.of("albino", Condition.where("C", "albino")).covering("coat", "white"))
                        .population(
                                "pale stock",
                                founders -> founders.frequency("C", "C", Probability.of(4, 5))
                                        .frequency("C", "c", Probability.of(1, 5))
                                        .frequency("D", "D", Probability.ZERO)
                                        .frequency("D", "d", Probability.ONE))
                        .population(
                                "mixed stock",
                                founders -> founders.frequency("C", "C", Probability.of(4, 5))
                                        .frequency("C", "c", Probability.of(1, 5))
                                        .frequency("D", "D", Probability.of(9, 10))
                                        .frequency("D", "d", Probability.of(1, 10)))
                        .build())
                .called("two loci");
    }
}
