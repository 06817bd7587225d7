package org.geneticsrules.examples;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.named.NameAnswers;
import org.geneticsrules.model.Model;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.vocabulary.Occasion;
import org.geneticsrules.vocabulary.Vocabulary;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Says what an animal that looks so is called. */
@Command(
        name = "name",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "Says what an animal that looks so is called in each region, and why not something else.",
        footer = {
            "",
            "What is Juniper called, a pale ferret with dark eyes, seen in her second winter?",
            "  genetics name --look \"hue: black, dilution: sandy, eye colour: dark\" --moult 2 --season winter",
            "",
            "Names are what people of a region say; they are no statement about inheritance."
        })
final class NameCommand implements Callable<Integer> {

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
            description = "What it looks like, \"trait: state, ...\"; may be repeated.")
    private List<String> looks = new ArrayList<>();

    @Option(
            names = "--in",
            paramLabel = "VOCABULARY",
            description = "The vocabulary, by its id or region; may be repeated. Default: all about these traits.")
    private List<String> in = new ArrayList<>();

    @Mixin
    private VocabularyOptions options;

    @Override
    public Integer call() {
        output.isJson(); // a misspelt format is found before the work
        Answers answers = choice.answers();
        Model model = answers.compiled().model();
        Map<String, String> seen = new LinkedHashMap<>();
        for (String look : looks) {
            Inputs.look("--look", model, look).asMap().forEach((trait, state) -> {
                String before = seen.putIfAbsent(trait, state);
                if (before != null && !before.equals(state)) {
                    throw new InputException("problem: --look states two different things of \"" + trait + "\": "
                            + before + " and " + state + "; an animal is named as it looks at one time\n");
                }
            });
        }
        Optional<Sex> shown = Optional.ofNullable(seen.remove(Sex.VARIABLE)).flatMap(Sex::of);
        Occasion stated = options.occasion(model);
        if (shown.isPresent() && stated.sex().filter(sex -> sex != shown.get()).isPresent()) {
            throw new InputException("problem: --look and --sex state different sexes\n");
        }
        Occasion occasion = shown.map(stated::of).orElse(stated);
        List<Vocabulary> asked = in.isEmpty()
                ? options.all(model)
                : in.stream().map(given -> options.one("--in", given, model)).toList();
        return output.print(
                NameAnswers.of(answers).name(asked, Phenotype.from(seen), occasion),
                model,
                spec.commandLine().getOut());
    }
}
