package org.geneticsrules.examples;

import java.util.List;
import java.util.concurrent.Callable;
import org.geneticsrules.answer.estimated.ModelNumber;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.statistics.Counts;
import org.geneticsrules.statistics.Ratio;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Estimates how well animals of some genotypes live. */
@Command(
        name = "viability",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "Estimates how well animals of some genotypes live until they are counted, compared with others.",
        footer = {
            "",
            "800 yellow and 435 other mice, 3:1 when conceived, a quarter of all being homozygous yellow:",
            "  genetics estimate viability --counts 800:435 --conceived 3:1 --concerned 1/4:0",
            "By recorded animals, the chance that a statement of the model gives:",
            "  genetics estimate viability --file model.json --catalogue traits.json --pedigree kennel.csv \\",
            "      --statement frail",
            "",
            "Exits with 1 where the records say nothing of it."
        })
final class EstimateViabilityCommand implements Callable<Integer> {

    @Option(
            names = "--counts",
            paramLabel = "COUNTS",
            description = "Animals counted in each class, for example 800:435.")
    private @Nullable String counts;

    @Option(
            names = "--conceived",
            paramLabel = "RATIO",
            description = "With --counts: the ratio of the classes among all that are conceived, for example 3:1.")
    private @Nullable String conceived;

    @Option(
            names = "--concerned",
            paramLabel = "SHARES",
            description = "With --counts: of each class, the share of all conceived that is of the class and of the "
                    + "genotypes asked about, for example 1/4:0.")
    private @Nullable String concerned;

    @Option(
            names = "--statement",
            paramLabel = "ID",
            description = "With --pedigree: the statement about viability of the model, by its id.")
    private @Nullable String statement;

    @Mixin
    private EstimateQuestion question;

    @Override
    public Integer call() {
        if (question.source(
                        List.of("--statement"),
                        EstimateQuestion.Source.of("--counts", counts != null, "--conceived", "--concerned"))
                .equals("--pedigree")) {
            String of = EstimateQuestion.needed("--statement", statement, "the statement about viability");
            return question.records(records -> records.ofModel(new ModelNumber.Living(of)));
        }
        String given = String.valueOf(counts);
        long[] found = CountTexts.classes("--counts", given, 0, "for example 800:435");
        String ratio = EstimateQuestion.needed("--conceived", conceived, "the ratio among all that are conceived");
        long[] parts = CountTexts.classes("--conceived", ratio, found.length, "for example 3:1");
        String shares = EstimateQuestion.needed(
                "--concerned", concerned, "the shares of the genotypes asked about, class by class");
        List<Probability> of = CountTexts.chances("--concerned", shares);
        return question.print(CountTexts.of(
                "--counts", given, () -> question.counted().viability(Counts.of(found), Ratio.of(parts), of)));
    }
}
