/** A figure that can be read two ways or looks unlikely: asked under the field, before it is kept. */
import { Button } from '../../../kit/button.tsx';
import { Notice } from '../../../kit/notice.tsx';
import type { Question } from '../reading-question.ts';

export function ReadingQuestion({
  question,
  onTake,
  onAgain,
}: {
  question: Question;
  onTake: (typed: string, sure: boolean) => void;
  onAgain: () => void;
}) {
  const { right } = question;
  return (
    <Notice
      kind="wrong"
      acts={
        <>
          {question.choices.map((choice) => (
            <Button key={choice.typed} onPress={() => onTake(choice.typed, true)}>
              Use {choice.words}
            </Button>
          ))}
          {right && <Button onPress={() => onTake(right.typed, true)}>{right.words}</Button>}
          <Button onPress={onAgain}>Type again</Button>
        </>
      }
    >
      {question.words} <small>{keysWords(question)}</small>
    </Notice>
  );
}

/** How a keypad answers, which has no other keys. */
function keysWords({ choices, right }: Question): string {
  const first = choices[0] ? `key * ${choices[0].words}` : 'key * type again';
  return right ? `${first}, key + ${right.words}` : first;
}
