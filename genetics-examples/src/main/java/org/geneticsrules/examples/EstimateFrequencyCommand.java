package org.geneticsrules.examples;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.HiddenAllele;
import org.geneticsrules.estimation.HardyWeinberg;
import org.geneticsrules.model.Model;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.statistics.Counts;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Estimates how frequent the alleles of a locus are. */
@Command(
        name = "frequency",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = {
            "Estimates how frequent alleles are among unrelated animals.",
            "By their genotypes or looks; and tells whether the genotypes are in Hardy-Weinberg proportions."
        },
        footer = {
            "",
            "How common is albino in my kennel? By the animals without recorded parents:",
            "  genetics estimate frequency --pedigree kennel.csv --allele albino",
            "By animals whose genotypes are known: two of the first allele, one of each, two of the second:",
            "  genetics estimate frequency --genotypes 119:76:13",
            "By how many animals show each expression of a locus:",
            "  genetics estimate frequency --model geneticsrules.ferret.molecular-only --locus C \\",
            "      --shown \"pigment=96, albino=4\"",
            "",
            "Exits with 1 where the records say nothing of it."
        })
final class EstimateFrequencyCommand implements Callable<Integer> {

    @Option(
            names = "--genotypes",
            paramLabel = "COUNTS",
            description =
                    "Animals with two of the first allele, one of each, two of the second, for example 119:76:13.")
    private @Nullable String genotypes;

    @Option(
            names = "--shown",
            paramLabel = "COUNTS",
            description = "How many unrelated animals show each expression of the locus, for example \"pigment=96, "
                    + "albino=4\"; with --locus.")
    private @Nullable String shown;

    @Option(
            names = "--allele",
            paramLabel = "ALLELE",
            description = "The allele asked about, by word or letter, for example albino; or state --locus.")
    private @Nullable String allele;

    @Option(names = "--locus", paramLabel = "LOCUS", description = "The locus whose alleles are counted, by its id.")
    private @Nullable String locus;

    @Option(
            names = "--animals",
            paramLabel = "IDS",
            description =
                    "With --pedigree: the animals that count, by commas. Default: those without recorded parents.")
    private @Nullable String animals;

    @Mixin
    private EstimateQuestion question;

    @Override
    public Integer call() {
        return switch (question.source(
                List.of("--allele", "--locus", "--animals"),
                EstimateQuestion.Source.of("--genotypes", genotypes != null),
                EstimateQuestion.Source.of("--shown", shown != null, "--allele", "--locus")
                        .asking())) {
            case "--genotypes" -> genotypes(String.valueOf(genotypes));
            case "--shown" -> shown(String.valueOf(shown));
            default -> {
                List<String> only = Inputs.names(animals);
                stated();
                yield question.looked(asked -> {
                    only.forEach(id -> asked.animal("--animals", id));
                    Supplier<Place> place = asked.read(() -> place(asked.model()));
                    return () -> records -> records.frequencies(
                            place.get().locus(), only, place.get().allele());
                });
            }
        };
    }

    /** Where alleles are counted, and which of them is asked about. */
    private record Place(String locus, Optional<String> allele) {}

    private void stated() {
        if ((locus == null) == (allele == null)) {
            throw new InputException(
                    "problem: state either --allele or --locus: the allele asked about, or the locus of all alleles\n");
        }
    }

    private Place place(Model model) {
        if (allele != null) {
            String name = allele;
            HiddenAllele found = Inputs.reading("--allele", name, () -> HiddenAllele.find(model, name));
            return new Place(found.locus(), Optional.of(found.allele().id()));
        }
        String id = String.valueOf(locus).strip();
        if (!model.loci().containsKey(id)) {
            throw new InputException(ProblemText.of(
                    "--locus",
                    id,
                    List.of(Problems.unknown(
                            Stage.REFERENCES,
                            "unknown-locus",
                            "",
                            "locus",
                            id,
                            model.loci().keySet()))));
        }
        return new Place(id, Optional.empty());
    }

    private int genotypes(String given) {
        long[] counts = CountTexts.classes("--genotypes", given, 3, "for example 119:76:13");
        return question.print(CountTexts.of(
                "--genotypes",
                given,
                () -> question.counted().genotypes(new HardyWeinberg(counts[0], counts[1], counts[2]))));
    }

    private int shown(String given) {
        stated();
        Answers answers = question.answers();
        Place place = place(answers.compiled().model());
        Map<String, Long> counts = new LinkedHashMap<>();
        for (String part : Inputs.names(given)) {
            int equals = part.lastIndexOf('=');
            if (equals < 1 || !part.substring(equals + 1).strip().matches("\\d{1,15}")) {
                throw CountTexts.wrong(
                        "--shown",
                        given,
                        "\"" + part + "\" is no expression with its count",
                        "for example \"albino=4\"");
            }
            counts.merge(
                    part.substring(0, equals).strip(),
                    Long.parseLong(part.substring(equals + 1).strip()),
                    Long::sum);
        }
        return question.print(CountTexts.of(
                "--shown",
                given,
                () -> question.counted().frequencies(answers, place.locus(), new Counts(counts), place.allele())));
    }
}
