package org.geneticsrules.examples;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import org.geneticsrules.answer.estimated.CountedAnswers.Ascertained;
import org.geneticsrules.estimation.RecordedFamilies;
import org.geneticsrules.estimation.Sibship;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.trait.Phenotype;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Estimates which share of the young of two carriers is affected. */
@Command(
        name = "segregation",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = {
            "Estimates which share of the young of two carriers shows something.",
            "Families that were noticed for it hold more of it than others, so say how they came to notice."
        },
        footer = {
            "",
            "Is it really one in four? By litters whose records say how they came to be recorded:",
            "  genetics estimate segregation --pedigree litters.csv --look \"eye colour: pink\"",
            "By families that were counted because at least one is affected: young and affected, families:",
            "  genetics estimate segregation --families \"5:2 x 3, 4:1 x 6, 3:1 x 10\" \\",
            "      --ascertainment \"at least one\"",
            "By families found through probands, who are counted too:",
            "  genetics estimate segregation --families \"7:3:2, 5:2:1 x 5\" --ascertainment probands",
            "",
            "Exits with 1 where the records say nothing of it."
        })
final class EstimateSegregationCommand implements Callable<Integer> {

    @Option(
            names = "--families",
            paramLabel = "COUNTS",
            description = "Families of carriers, separated by commas: young and affected (and probands), and after "
                    + "x how many such families there are, for example \"5:2 x 3, 4:1\".")
    private @Nullable String families;

    @Option(
            names = "--ascertainment",
            paramLabel = "HOW",
            description = "With --families, how they came to be counted: complete (all families of carriers), "
                    + "\"at least one\" (every family with one affected), or probands (through affected young who "
                    + "came to notice each by itself).")
    private @Nullable String ascertainment;

    @Option(
            names = "--proband-chance",
            paramLabel = "CHANCE",
            description = "The chance of an affected animal to come to notice by itself. Default: it is estimated too.")
    private @Nullable String probandChance;

    @Option(
            names = "--look",
            paramLabel = "LOOK",
            description = "With --pedigree: what the young may show, for example \"eye colour: pink\".")
    private @Nullable String look;

    @Option(
            names = "--parents-showing",
            paramLabel = "PARENTS",
            description = "With --pedigree: litters of which neither (default), one or both parents show it.")
    private String parents = "neither";

    @Option(names = "--litters", paramLabel = "IDS", description = "With --pedigree: only these litters, by commas.")
    private @Nullable String litters;

    @Option(
            names = "--carriers-known",
            description = "With --pedigree: all couples are known to be carriers by tests or other young.")
    private boolean carriersKnown;

    @Option(
            names = "--share",
            paramLabel = "SHARE",
            description = "The share that is held against the counts. Default: 1/4; with one parent showing it, 1/2.")
    private @Nullable String share;

    @Mixin
    private EstimateQuestion question;

    @Override
    public Integer call() {
        String source = question.source(
                List.of("--look", "--parents-showing", "--litters", "--carriers-known", "--share"),
                EstimateQuestion.Source.of(
                        "--families", families != null, "--ascertainment", "--proband-chance", "--share"));
        return source.equals("--pedigree") ? pedigree() : families(String.valueOf(families), share("1/4"));
    }

    /** The share to be tested. */
    private Probability share(String usual) {
        String given = share == null ? usual : share;
        Probability stated = Inputs.chance("--share", given);
        if (stated.isZero() || stated.isOne()) {
            Problem problem = Problem.of(Stage.SYNTAX, "share-out-of-range", "", given + " is no share to be tested")
                    .expecting("more than 0 and less than 1, such as 1/4");
            throw new InputException(ProblemText.of("--share", given, List.of(problem)));
        }
        return stated;
    }

    private int families(String given, Probability stated) {
        String how = Inputs.choice(
                "--ascertainment",
                EstimateQuestion.needed(
                        "--ascertainment",
                        ascertainment,
                        "complete, \"at least one\" or probands; the estimate hangs on how families came to be counted"),
                "complete",
                "at least one",
                "probands");
        Ascertained kind = how.equals("complete")
                ? Ascertained.COMPLETE
                : how.equals("probands") ? Ascertained.PROBANDS : Ascertained.AT_LEAST_ONE;
        if (probandChance != null && kind != Ascertained.PROBANDS) {
            throw new InputException("problem: --proband-chance says nothing to --ascertainment \"" + how
                    + "\"; leave it out, or state --ascertainment probands\n");
        }
        Optional<Probability> chance =
                Optional.ofNullable(probandChance).map(text -> Inputs.chance("--proband-chance", text));
        List<Sibship> counted = CountTexts.families("--families", given, kind == Ascertained.PROBANDS);
        return question.print(CountTexts.of(
                "--families", given, () -> question.counted().segregation(counted, kind, chance, stated)));
    }

    private int pedigree() {
        String given = EstimateQuestion.needed("--look", look, "what the young may show, such as \"eye colour: pink\"");
        int showing = switch (Inputs.choice("--parents-showing", parents, "neither", "one", "both")) {
            case "neither" -> 0;
            case "one" -> 1;
            default -> 2;
        };
        Probability stated = share(showing == 1 ? "1/2" : "1/4");
        if (showing == 2) {
            EstimateQuestion.needed("--share", share, "the share that two parents who show it should have");
        }
        Set<String> only = new TreeSet<>(Inputs.names(litters));
        return question.looked(asked -> {
            Supplier<Phenotype> seen = asked.read(() -> Inputs.look("--look", asked.model(), given));
            only.forEach(id -> asked.litter("--litters", id));
            return () -> records ->
                    records.segregation(new RecordedFamilies.Which(seen.get(), showing, only, carriersKnown), stated);
        });
    }
}
