package org.geneticsrules.examples;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.geneticsrules.answer.estimated.ModelNumber;
import org.geneticsrules.estimation.IntercrossLinkage;
import org.geneticsrules.estimation.LinkageFamily;
import org.geneticsrules.estimation.TestCross;
import org.geneticsrules.estimation.ThreePointCross;
import org.geneticsrules.statistics.Counts;
import org.geneticsrules.trait.Sex;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Estimates how often two loci recombine. */
@Command(
        name = "recombination",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description =
                "Estimates how often two loci recombine, by the young of crosses or by a pedigree; with LOD scores.",
        footer = {
            "",
            "By a test cross with 12 recombinants among 100 young:",
            "  genetics estimate recombination --test-cross \"12 of 100\"",
            "By two families in which it is not known which alleles lie together:",
            "  genetics estimate recombination --phase unknown --test-cross \"1 of 9\" --test-cross \"2 of 11\"",
            "By an intercross: both dominant characters, the first only, the second only, neither:",
            "  genetics estimate recombination --intercross 1997:906:904:32 --phase repulsion",
            "By recorded animals, under a model that states the interval:",
            "  genetics estimate recombination --file model.json --catalogue traits.json --pedigree flies.csv \\",
            "      --interval B-W",
            "",
            "Exits with 1 where the records say nothing of it."
        })
final class EstimateRecombinationCommand implements Callable<Integer> {

    @Option(
            names = "--test-cross",
            paramLabel = "COUNT",
            description = "Recombinants among the young of a double heterozygote and a double recessive, for "
                    + "example \"12 of 100\". Once for each family.")
    private List<String> testCross = new ArrayList<>();

    @Option(
            names = "--intercross",
            paramLabel = "COUNTS",
            description = "Young of two double heterozygotes, where both loci are completely dominant: both "
                    + "dominant characters, the first only, the second only, neither, for example 284:21:21:55.")
    private @Nullable String intercross;

    @Option(
            names = "--phase",
            paramLabel = "PHASE",
            description = "Of a test cross: known (default), or unknown. Of an intercross: coupling (both "
                    + "recessives on one chromosome) or repulsion (one on each).")
    private @Nullable String phase;

    @Option(
            names = "--three-point",
            paramLabel = "COUNTS",
            description = "Young of a test cross of three loci: no crossover, one in the first interval, one in the "
                    + "second, one in both, for example 1172:85:183:8.")
    private @Nullable String threePoint;

    @Option(
            names = "--interval",
            paramLabel = "INTERVAL",
            description = "With --pedigree: two neighbouring linked loci of the model, for example B-W.")
    private @Nullable String interval;

    @Option(
            names = "--gametes-of",
            paramLabel = "SEX",
            description = "With --pedigree: only of one sex, female or male. Default: the same in both.")
    private @Nullable String sex;

    @Mixin
    private EstimateQuestion question;

    @Override
    public Integer call() {
        return switch (question.source(
                List.of("--interval", "--gametes-of"),
                EstimateQuestion.Source.of("--test-cross", !testCross.isEmpty(), "--phase"),
                EstimateQuestion.Source.of("--intercross", intercross != null, "--phase"),
                EstimateQuestion.Source.of("--three-point", threePoint != null))) {
            case "--test-cross" -> testCross();
            case "--intercross" -> intercross(String.valueOf(intercross));
            case "--three-point" -> threePoint(String.valueOf(threePoint));
            default -> {
                String of = EstimateQuestion.needed("--interval", interval, "which two linked loci are asked about");
                Optional<Sex> one = Optional.ofNullable(sex).map(word -> Inputs.sex("--gametes-of", word));
                yield question.records(records -> records.ofModel(new ModelNumber.Recombining(of, one)));
            }
        };
    }

    private int testCross() {
        boolean known = phase == null
                || Inputs.choice("--phase", phase, "known", "unknown").equals("known");
        if (known && testCross.size() == 1) {
            String given = testCross.get(0);
            CountTexts.Some some = CountTexts.some("--test-cross", given);
            return question.print(question.counted()
                    .testCross(CountTexts.of("--test-cross", given, () -> new TestCross(some.some(), some.of()))));
        }
        List<LinkageFamily> families = new ArrayList<>();
        for (String given : testCross) {
            CountTexts.Some some = CountTexts.some("--test-cross", given);
            families.add(CountTexts.of(
                    "--test-cross",
                    given,
                    () -> new LinkageFamily(
                            "family " + (families.size() + 1), some.some(), some.of() - some.some(), known)));
        }
        return question.print(question.counted().families(families));
    }

    private int intercross(String given) {
        long[] counts = CountTexts.classes("--intercross", given, 4, "for example 284:21:21:55");
        String stated = EstimateQuestion.needed(
                "--phase", phase, "coupling or repulsion, how the recessives lie in the parents");
        IntercrossLinkage.Phase lie =
                Inputs.choice("--phase", stated, "coupling", "repulsion").equals("coupling")
                        ? IntercrossLinkage.Phase.COUPLING
                        : IntercrossLinkage.Phase.REPULSION;
        return question.print(question.counted()
                .intercross(CountTexts.of("--intercross", given, () -> new IntercrossLinkage(Counts.of(counts), lie))));
    }

    private int threePoint(String given) {
        long[] counts = CountTexts.classes("--three-point", given, 4, "for example 1172:85:183:8");
        return question.print(question.counted()
                .threePoint(CountTexts.of(
                        "--three-point",
                        given,
                        () -> new ThreePointCross(counts[0], counts[1], counts[2], counts[3]))));
    }
}
