package org.geneticsrules.examples;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.described.DescribeQuestion;
import org.geneticsrules.answer.described.Descriptions;
import org.geneticsrules.model.Model;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Describes an animal by what was seen of it. */
@Command(
        name = "describe",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = {
            "Describes an animal by what was seen of it, trait by trait.",
            "It tells whether all of it can be one animal, and what to look at again."
        },
        footer = {
            "",
            "A stray with white head, seen on the day she came:",
            "  genetics describe --sex female \\",
            "      --look \"hue: black, head white: wide stripe, eye colour: dark @ moult 2\"",
            "Has this coat darkened, or is it another animal?",
            "  genetics describe --look \"white guard hairs: about half @ moult 3, winter\" \\",
            "      --look \"white guard hairs: scattered @ moult 5, winter\"",
            "",
            "No genotype is needed, and none is guessed: see coat and look-next for what an animal may carry."
        })
final class DescribeCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Mixin
    private ModelChoice choice;

    @Mixin
    private OutputChoice output;

    @Option(
            names = "--look",
            paramLabel = "LOOK",
            required = true,
            description = "What was seen, \"trait: state, ...\", and when and in which light, "
                    + "\"... @ week 60, moult 2, winter, in daylight\". "
                    + "Once for each look, in the order of time.")
    private List<String> looks = new ArrayList<>();

    @Option(names = "--sex", paramLabel = "SEX", description = "Its sex: female or male. Default: not known.")
    private @Nullable String sex;

    @Override
    public Integer call() {
        output.isJson(); // a misspelt format is found before the work
        Answers answers = choice.answers();
        Model model = answers.compiled().model();
        Set<Sex> sexes = new LinkedHashSet<>();
        if (sex != null) {
            sexes.add(Inputs.sex("--sex", sex));
        }
        List<Sighting> seen = new ArrayList<>();
        StringBuilder wrong = new StringBuilder();
        for (String look : looks) {
            Sighting one;
            try {
                one = Inputs.sighting("--look", model, look);
            } catch (InputException e) {
                wrong.append(e.text());
                continue;
            }
            one.look().state(Sex.VARIABLE).flatMap(Sex::of).ifPresent(sexes::add);
            Set<String> traits = new LinkedHashSet<>(one.look().traits());
            traits.remove(Sex.VARIABLE);
            Phenotype rest = one.look().restrictedTo(traits);
            if (!rest.traits().isEmpty()) {
                seen.add(new Sighting(one.stage(), rest, one.light()));
            }
        }
        if (!wrong.isEmpty()) {
            throw new InputException(wrong.toString());
        }
        if (sexes.size() > 1) {
            throw new InputException("problem: --look and --sex state different sexes\n");
        }
        if (seen.isEmpty()) {
            throw new InputException("problem: --look states no trait that was seen, only a sex\n");
        }
        return output.print(
                Descriptions.of(answers)
                        .describe(new DescribeQuestion(seen, sexes.stream().findFirst())),
                model,
                spec.commandLine().getOut());
    }
}
