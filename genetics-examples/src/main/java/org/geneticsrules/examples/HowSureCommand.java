package org.geneticsrules.examples;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.HiddenAllele;
import org.geneticsrules.answer.recorded.HowSureQuestion;
import org.geneticsrules.answer.recorded.RecordedAnswers;
import org.geneticsrules.model.Model;
import org.geneticsrules.trait.LifeStage;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Says how sure one may be, by a planned mating, whether a recorded animal carries an allele. */
@Command(
        name = "how-sure",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description =
                "Says how sure one may be whether a recorded animal carries an allele, by kits of a planned mating.",
        footer = {
            "",
            "Three numbers stand side by side, because they answer different questions: how good the test is,",
            "what is left to believe, and what to expect of the next litter. It advises no mating.",
            "",
            "If Fennick is mated to the albino jill Sorrel, what do clear kits tell?",
            "  genetics how-sure --pedigree kennel.csv --animal Fennick --carries albino --mate Sorrel"
        })
final class HowSureCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Mixin
    private ModelChoice choice;

    @Mixin
    private PedigreeChoice pedigree;

    @Mixin
    private OutputChoice output;

    @Option(names = "--animal", paramLabel = "ID", required = true, description = "The animal, by its id.")
    private String animal = "";

    @Option(
            names = "--carries",
            paramLabel = "NAME",
            required = true,
            description = "What it may carry: an allele by word or letter.")
    private String carries = "";

    @Option(names = "--mate", paramLabel = "ID", required = true, description = "Its mate, by its id.")
    private String mate = "";

    @Option(
            names = "--sign",
            paramLabel = "LOOK",
            description = {
                "A look of a kit that shows it, \"trait: state, ...\"; once for each.",
                "Default: the looks that prove it in the trait that tells most."
            })
    private List<String> signs = new ArrayList<>();

    @Option(
            names = "--kits",
            paramLabel = "N",
            defaultValue = "8",
            description = "How many kits to look ahead, 1 to 30. Default: 8.")
    private int kits = 8;

    @Mixin
    private StageOptions when;

    @Override
    public Integer call() {
        output.isJson(); // a misspelt format is found before the work
        Answers answers = choice.answers();
        Model model = answers.compiled().model();
        HiddenAllele allele = Inputs.reading(
                "--carries", carries, () -> HiddenAllele.find(answers.compiled().model(), carries));
        LifeStage stage = when.stage(model);
        int count = Inputs.count("--kits", kits, 1, HowSureQuestion.MOST_KITS);
        RecordedAnswers recorded = pedigree.about(answers);
        HowSureQuestion question = HowSureQuestion.of(
                        PedigreeChoice.animal(recorded, "--animal", animal),
                        allele,
                        PedigreeChoice.animal(recorded, "--mate", mate))
                .shownBy(signs.stream()
                        .map(sign -> Inputs.look("--sign", model, sign))
                        .toList())
                .at(stage)
                .forKits(count);
        return output.print(
                recorded.howSure(question), model, spec.commandLine().getOut());
    }
}
