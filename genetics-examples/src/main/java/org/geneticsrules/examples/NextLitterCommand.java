package org.geneticsrules.examples;

import java.util.LinkedHashSet;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import org.geneticsrules.answer.recorded.NextLitterQuestion;
import org.geneticsrules.model.Model;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Foresees a litter of two recorded animals. */
@Command(
        name = "next-litter",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "Foresees the next litter of two recorded animals, by all records of them and their relatives.",
        footer = {
            "",
            "What may Tarn and Wicket have next, and how many of seven kits are albino?",
            "  genetics next-litter --pedigree kennel.csv --sire Tarn --dam Wicket --traits \"eye colour\" \\",
            "      --look \"eye colour: pink\" --kits 7",
            "",
            "Kits of parents who are not known for certain are not independent of one another; the numbers",
            "of kits take that into account."
        })
final class NextLitterCommand implements Callable<Integer> {

    @Mixin
    private RecordedOptions recorded;

    @Option(names = "--sire", paramLabel = "ID", required = true, description = "The sire, by his id.")
    private String sire = "";

    @Option(names = "--dam", paramLabel = "ID", required = true, description = "The dam, by her id.")
    private String dam = "";

    @Option(
            names = "--traits",
            paramLabel = "NAMES",
            required = true,
            description = "The traits asked for, separated by commas; a few at a time.")
    private String traits = "";

    @Option(
            names = "--look",
            paramLabel = "LOOK",
            description = "A look to count in the litter, for example \"eye colour: pink\".")
    private @Nullable String look;

    @Option(
            names = "--kits",
            paramLabel = "N",
            defaultValue = "8",
            description = "In a litter of how many kits --look is counted, 1 to 30. Default: 8.")
    private int kits = 8;

    @Mixin
    private StageOptions when;

    @Override
    public Integer call() {
        return recorded.answer(asked -> {
            Model model = asked.model();
            Set<String> named = new LinkedHashSet<>(Inputs.names(traits));
            if (named.isEmpty()) {
                asked.wrong("--traits names no trait");
            }
            Supplier<String> male = asked.animal("--sire", sire);
            Supplier<String> female = asked.animal("--dam", dam);
            Supplier<LifeStage> stage = asked.read(() -> when.stage(model));
            Supplier<Integer> count = asked.read(() -> Inputs.count("--kits", kits, 1, NextLitterQuestion.MOST_KITS));
            Supplier<Optional<Phenotype>> counted =
                    asked.read(() -> Optional.ofNullable(look).map(stated -> Inputs.look("--look", model, stated)));
            return records -> {
                NextLitterQuestion question =
                        NextLitterQuestion.of(male.get(), female.get(), named).at(stage.get());
                return records.nextLitter(counted.get()
                        .map(kit -> question.counting(kit, count.get()))
                        .orElse(question));
            };
        });
    }
}
