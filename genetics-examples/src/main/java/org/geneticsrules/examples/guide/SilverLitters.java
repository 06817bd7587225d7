package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import java.util.List;
import java.util.function.Consumer;
import org.geneticsrules.comparison.Candidate;
import org.geneticsrules.comparison.ComparedModels;
import org.geneticsrules.model.LocusBuilder;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;

/** Silver by dose, or recessive, or dominant: what litters of carriers say. */
final class SilverLitters {

    private SilverLitters() {}

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
        // Invented: both parents have one dose by a DNA test, and every litter was written down.
        String book = """
                id,count,sex,litter,dam,sire,ascertainment,locus: M,trait: white hairs
                Hazel,,female,,,,,M/m,
                Rowan,,male,,,,,M/m,
                ,1,,first,Hazel,Rowan,complete,,none
                ,3,,first,,,,,some
                ,1,,second,Hazel,Rowan,complete,,none
                ,4,,second,,,,,some
                """;
        Candidate recessive = silver("recessive", m -> m.dominant("M", "m").shows("m", "some"));
        Candidate dose = silver("by dose", m -> m.shows("M/m", "some").shows("m", "nearly all"));
        Candidate dominant = silver("dominant", m -> m.dominant("m", "M").shows("m", "some"));
        Pedigree litters = LitterVerdicts.records(book);
        LitterVerdicts.ratios(out, LitterVerdicts.compare(List.of(recessive, dose), litters, "any"));
        LitterVerdicts.ratios(out, LitterVerdicts.compare(List.of(recessive, dose, dominant), litters, "any"));
        Pedigree more = LitterVerdicts.records(book
                + ",3,,third,Hazel,Rowan,complete,,some\n"
                + ",1,,third,,,,,nearly all\n");
        ComparedModels compared = LitterVerdicts.compare(List.of(recessive, dose, dominant), more, "any");
        LitterVerdicts.ratios(out, compared);
        out.println("recessive is possible again without any one of " + compared.recheck(0).get(0).animals());
        LitterVerdicts.verdict(out, List.of(dose, dominant, recessive), more, "any");
        // end
        // spotless:on
        return Shown.of(dose.model());
    }

    private static final Catalogue TRAITS = Catalogue.builder("sample.silver.traits", "1.0.0")
            .trait("white hairs", "none", "some", "nearly all")
            .build();

    /** A model of silver, by what its allele shows. */
    static Candidate silver(String name, Consumer<LocusBuilder> doses) {
        return Candidate.of(Model.builder("sample.silver-" + name.replace(' ', '-'), "1.0.0", TRAITS)
                        .title("silver " + name)
                        .locus("M", m -> {
                            m.alleles("M", "m")
                                    .expressions("none", "some", "nearly all")
                                    .shows("M", "none");
                            doses.accept(m);
                        })
                        .trait(
                                "white hairs",
                                hairs -> hairs.when(Condition.where("M", "some"), "some")
                                        .when(Condition.where("M", "nearly all"), "nearly all")
                                        .otherwise("none"))
                        .population(
                                "any",
                                founders -> founders.frequency("M", "M", Probability.of(9, 10))
                                        .frequency("M", "m", Probability.of(1, 10)))
                        .build())
                .called(name);
    }
}
