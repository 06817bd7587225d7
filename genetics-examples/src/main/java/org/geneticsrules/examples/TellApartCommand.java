package org.geneticsrules.examples;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import org.geneticsrules.answer.compared.LitterAnswers;
import org.geneticsrules.answer.compared.TellApartQuestion;
import org.geneticsrules.answer.recorded.Progress;
import org.geneticsrules.comparison.Candidate;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.LifeStage;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Says what can be done next to tell models apart. */
@Command(
        name = "tell-apart",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = {
            "Says what can be done next to tell beliefs about inheritance apart, and what it may say.",
            "Looks at animals that are there come first, then DNA tests, then kits of planned matings."
        },
        footer = {
            "",
            "It advises no mating. Those that a caution excludes are left out with the reason, unless they are",
            "asked for by the name of the caution; matings made for this alone are worked out only when asked",
            "for, and told last.",
            "",
            "Is sandy of one series with chocolate? What would the litter say that Fern and Ash will have?",
            "  genetics tell-apart --pedigree litters.csv --rival geneticsrules.ferret.pale-apart \\",
            "      --planned \"Ash, Fern\" --weeks 60 --moult 2",
            "",
            "Exits with 1 where nothing that was tried tells them apart and it is not proved that nothing can."
        })
final class TellApartCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Mixin
    private ModelChoice choice;

    @Option(
            names = "--rival",
            paramLabel = "MODEL",
            required = true,
            description = {
                "A model or a patch to tell it from: the id of one of a plug-in, or a file. May be repeated.",
            })
    private List<String> rivals = new ArrayList<>();

    @Mixin
    private PedigreeChoice pedigree;

    @Option(
            names = "--planned",
            paramLabel = "SIRE, DAM",
            description = "A mating that is made in any case, by the ids of both, in either order. May be repeated.")
    private List<String> planned = new ArrayList<>();

    @Option(
            names = "--new-matings",
            description = "Work out, too, matings that would be made for this alone: couples that had litters, and "
                    + "other recorded animals. Told last, and no advice to make them.")
    private boolean newMatings;

    @Option(
            names = "--traits",
            paramLabel = "NAMES",
            description = {
                "The traits that are looked at, separated by commas, each alone and all together.",
                "Default: all that were recorded of any animal; if none were, all of which every model speaks."
            })
    private @Nullable String traits;

    @Mixin
    private StageOptions when;

    @Option(
            names = "--kits",
            paramLabel = "N",
            defaultValue = "" + TellApartQuestion.USUAL_KITS,
            description = "How many kits of a litter are looked at, 1 to " + TellApartQuestion.MOST_KITS + ". Default: "
                    + TellApartQuestion.USUAL_KITS + ".")
    private int kits = TellApartQuestion.USUAL_KITS;

    @Option(
            names = "--sure",
            paramLabel = "CHANCES",
            defaultValue = "80 %, 95 %",
            description = "How surely numbers of kits shall be enough, separated by commas. Default: 80 %%, 95 %%.")
    private String sure = "80 %, 95 %";

    @Option(
            names = "--in-spite-of",
            paramLabel = "CAUTION",
            description = "The name of a caution that leaves a mating out, to have it all the same; once for each.")
    private List<String> inSpiteOf = new ArrayList<>();

    @Option(
            names = "--progress",
            paramLabel = "WHEN",
            defaultValue = "auto",
            description = "Whether to show how far it has come: auto (on a terminal, default), always or never.")
    private String progress = "auto";

    @Mixin
    private OutputChoice output;

    @Override
    public Integer call() {
        Asked asked = new Asked(choice.answers(), pedigree);
        asked.read(output::isJson); // a misspelt format is found before the work
        Supplier<String> shown = asked.read(() -> Inputs.choice("--progress", progress, "auto", "always", "never"));
        asked.read(() -> ModelChoice.once(rivals));
        List<Supplier<Candidate>> others = rivals.stream()
                .map(rival -> asked.read(() -> choice.held(rival).candidate()))
                .toList();
        Supplier<LifeStage> stage = asked.read(() -> when.stage(asked.model()));
        Supplier<Integer> number = asked.read(() -> Inputs.count("--kits", kits, 1, TellApartQuestion.MOST_KITS));
        Supplier<List<Probability>> chances = asked.read(this::chances);
        List<List<Supplier<String>>> couples =
                planned.stream().map(couple -> couple(asked, couple)).toList();
        Set<String> named = new LinkedHashSet<>(Inputs.names(traits));
        LitterAnswers litters = LitterAnswers.of(asked.records());
        TellApartQuestion question = TellApartQuestion.usual()
                .inTraits(named)
                .at(stage.get())
                .inLittersOf(number.get())
                .surely(chances.get())
                .inSpiteOf(inSpiteOf);
        for (List<Supplier<String>> couple : couples) {
            question = question.planned(couple.get(0).get(), couple.get(1).get());
        }
        Progress bar = ProgressBar.of("weighing", spec.commandLine().getErr(), shown.get());
        return output.print(
                litters.tellApart(
                        newMatings ? question.withNewMatings() : question,
                        others.stream().map(Supplier::get).toList(),
                        bar),
                asked.model(),
                spec.commandLine().getOut());
    }

    private List<Probability> chances() {
        List<Probability> read = Inputs.names(sure).stream()
                .map(chance -> Inputs.chance("--sure", chance))
                .toList();
        if (read.isEmpty() || read.stream().anyMatch(one -> one.isOne() || one.isZero())) {
            throw new InputException("problem: --sure " + sure
                    + ": expected chances between 0 and 1, for example 95 %; no number of kits makes it certain\n");
        }
        return read;
    }

    private static List<Supplier<String>> couple(Asked asked, String stated) {
        List<String> both = Inputs.names(stated);
        if (both.size() != 2) {
            asked.wrong("--planned \"" + stated + "\": expected two animals, for example \"Ash, Fern\"");
            return List.of();
        }
        return List.of(asked.animal("--planned", both.get(0)), asked.animal("--planned", both.get(1)));
    }
}
